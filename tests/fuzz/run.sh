#!/usr/bin/env bash
# run.sh BUILD SECONDS [NAME...]: builds the fuzzers in BUILD and runs each for so many seconds, at the
# lowest priority. Ends with 1 where one of them finds something; the input lies in BUILD/fuzz/found.
# Twenty-five seconds each are a smoke test of five minutes: tests/fuzz/run.sh build-fuzz 25
set -euo pipefail
source=$(cd "$(dirname "$0")/../.." && pwd)
build=$1 seconds=$2
shift 2
[ -f "$build/build.ninja" ] || cmake -G Ninja -C "$source/src/cmake/fuzz.cmake" -S "$source" -B "$build" >/dev/null
nice -n 19 ninja -C "$build" fuzzers
[ -d "$build/fuzz/seeds" ] || python3 "$source/tests/fuzz/seeds.py" "$source" "$build/fuzz/seeds"
mkdir -p "$build/fuzz/found"
# the one file that each reads over and over lies in memory, where the system has such a place
[ -d /dev/shm ] && TMPDIR=$(mktemp -d -p /dev/shm) || TMPDIR=$(mktemp -d)
export TMPDIR
trap 'rm -r "$TMPDIR"' EXIT
[ $# -gt 0 ] || set -- $(cd "$build/fuzz/seeds" && ls)
bad=0
for name in "$@"; do
  seeds="$build/fuzz/seeds/$name" corpus="$build/fuzz/corpus/$name" log="$build/fuzz/$name.log"
  mkdir -p "$corpus"
  longest=$(stat -c %s "$seeds"/* | sort -n | tail -1)
  # strange sizes must be refused before memory is taken: 1 GB in all, 300 MB at once
  if nice -n 19 "$build/fuzz_$name" -max_total_time="$seconds" -timeout=10 -rss_limit_mb=1024 \
    -malloc_limit_mb=300 -max_len="$longest" -artifact_prefix="$build/fuzz/found/$name-" \
    -print_final_stats=1 "$corpus" "$seeds" >"$log" 2>&1; then
    runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
    reached=$(grep -o 'cov: [0-9]*' "$log" | tail -1 | tr -dc 0-9)
    echo "$name: $runs inputs, $reached branches reached, $(ls "$corpus" | wc -l) inputs kept, nothing found"
  else
    bad=1
    echo "$name: FOUND"
    grep -m3 -E "ERROR|SUMMARY|Test unit written" "$log" || tail -5 "$log"
  fi
done
exit $bad
