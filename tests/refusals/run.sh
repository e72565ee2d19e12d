#!/usr/bin/env bash
# run.sh PROGRAM: every case of this folder through the program. See README.md.
set -uo pipefail
program=$(realpath "$1")
corpus=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
tried=0
bad=0

complain() { echo "$1"; bad=$((bad + 1)); }

# One case with one command.
try() {
  local name=$1 command=$2 status
  cp -r "$corpus/$name" "$work/copy"
  (cd "$work/copy" && timeout 60 "$program" "$command" . >"$work/out" 2>"$work/err")
  status=$?
  tried=$((tried + 1))
  [ "$status" = 2 ] || complain "$name ($command): exit status $status, expected 2"
  [ ! -s "$work/out" ] || complain "$name ($command): something on standard output"
  if ! diff "$corpus/$name/expected.txt" "$work/err" >"$work/diff"; then
    complain "$name ($command): other lines than expected (<) on standard error (>)"
    cat "$work/diff"
  fi
  if ! diff -r "$corpus/$name" "$work/copy" >"$work/diff"; then
    complain "$name ($command): the folder was changed"
    cat "$work/diff"
  fi
  rm -rf "$work/copy"
}

for folder in "$corpus"/*/; do
  name=$(basename "$folder")
  command=check
  case $name in job-*) command=run ;; esac
  [ ! -f "$folder/command" ] || command=$(cat "$folder/command")
  try "$name" "$command"
done
echo "$tried refusals tried, $bad complaints"
[ "$bad" = 0 ] && [ "$tried" -gt 0 ]
