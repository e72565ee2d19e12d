#!/usr/bin/env bash
# run.sh PROGRAM: every case of this folder through the program. See README.md.
set -uo pipefail
program=$(realpath "$1")
corpus=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cases=0
bad=0

complain() { echo "$1"; bad=$((bad + 1)); }

# One case with one command.
try() {
  local name=$1 command=$2 copy="$work/copy" status
  rm -rf "$copy" && cp -r "$corpus/$name" "$copy" && rm -f "$copy/expected.txt" "$copy/command"
  (cd "$copy" && find . -type f -exec sha256sum {} + | sort) >"$work/before"
  (cd "$copy" && timeout 60 "$program" "$command" . >"$work/out" 2>"$work/err")
  status=$?
  (cd "$copy" && find . -type f -exec sha256sum {} + | sort) >"$work/after"
  cases=$((cases + 1))
  [ "$status" = 2 ] || complain "$name ($command): exit status $status, expected 2"
  [ ! -s "$work/out" ] || complain "$name ($command): something on standard output"
  cmp -s "$work/before" "$work/after" || complain "$name ($command): the folder was changed"
  if ! diff "$corpus/$name/expected.txt" "$work/err" >"$work/diff"; then
    complain "$name ($command): other lines than expected (<) on standard error (>)"
    cat "$work/diff"
  fi
}

for folder in "$corpus"/*/; do
  name=$(basename "$folder")
  if [ -f "$folder/command" ]; then
    try "$name" "$(cat "$folder/command")"
  else
    try "$name" check
    case $name in job-*) try "$name" run ;; esac
  fi
done
echo "$cases refusals tried, $bad complaints"
[ "$bad" = 0 ] && [ "$cases" -gt 0 ]
