#!/usr/bin/env python3
"""Golden runs through the real program. Usage: run_cases.py PROGRAM SOURCE STAGE [--update]

A case is a folder tests/commands/STAGE/CASE with a file `case` of lines `key: value`:
  job:      folder copied as the working folder, from the project's top (optional; else empty)
  args:     the command line, as a shell splits it
  exit:     the exact exit status
  writes:   the files that are new or changed afterwards, in order (none named: nothing is written)
  edit:     FILE | old text | new text      (old text must stand in the file exactly once)
  append:   FILE | one line
  remove:   FILE
  link:     FILE | where the new symbolic link leads
and, where the run says something, files `stdout` and `stderr` with exactly what it says. Other files
of the case are copied into the working folder. `\\n` in a value is a line break.
"""
import hashlib
import pathlib
import shlex
import shutil
import subprocess
import sys
import tempfile

OWN = {"case", "stdout", "stderr"}


def read_case(path):
    pairs = []
    for line in path.read_text(encoding="utf-8").splitlines():
        if line.strip() and not line.startswith("#"):
            key, _, value = line.partition(":")
            pairs.append((key.strip(), value.strip().replace("\\n", "\n")))
    return pairs


def prepare(case, pairs, source, folder):
    for key, value in pairs:
        if key == "job":
            shutil.copytree(source / value, folder, dirs_exist_ok=True,
                            ignore=shutil.ignore_patterns("out"))
    for extra in case.iterdir():
        if extra.name not in OWN:
            copy = shutil.copytree if extra.is_dir() else shutil.copy
            copy(extra, folder / extra.name)
    for key, value in pairs:
        parts = [p.strip(" ") for p in value.split("|")]
        target = folder / parts[0]
        if key == "edit":
            text = target.read_text(encoding="utf-8")
            if text.count(parts[1]) != 1:
                raise SystemExit(f"{case}: \"{parts[1]}\" stands {text.count(parts[1])} times")
            target.write_text(text.replace(parts[1], parts[2]), encoding="utf-8")
        elif key == "append":
            target.write_text(target.read_text(encoding="utf-8") + parts[1] + "\n", encoding="utf-8")
        elif key == "remove":
            target.unlink()
        elif key == "link":
            target.symlink_to(parts[1])


def snapshot(folder):
    return {str(p.relative_to(folder)): hashlib.sha256(p.read_bytes()).hexdigest()
            for p in sorted(folder.rglob("*")) if p.is_file()}


def golden(case, name):
    path = case / name
    return path.read_text(encoding="utf-8") if path.exists() else ""


def update(case, outcome):
    for name in ("stdout", "stderr"):
        path = case / name
        if outcome[name]:
            path.write_text(outcome[name], encoding="utf-8")
        elif path.exists():
            path.unlink()
    lines = [l for l in (case / "case").read_text(encoding="utf-8").splitlines()
             if l.partition(":")[0].strip() not in ("exit", "writes")]
    lines.append(f"exit: {outcome['exit']}")
    if outcome["writes"]:
        lines.append("writes: " + " ".join(outcome["writes"]))
    (case / "case").write_text("\n".join(lines) + "\n", encoding="utf-8")


def run(program, source, case):
    pairs = read_case(case / "case")
    values = dict(pairs)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name).resolve()
        prepare(case, pairs, source, folder)
        before = snapshot(folder)
        done = subprocess.run([program, *shlex.split(values["args"])], cwd=folder, text=True,
                              capture_output=True, timeout=120, check=False,
                              stdin=subprocess.DEVNULL)
        after = snapshot(folder)
    if gone := [f for f in before if f not in after]:
        raise SystemExit(f"{case}: the run removed {gone}")
    wanted = {"exit": values.get("exit", ""), "writes": values.get("writes", "").split(),
              "stdout": golden(case, "stdout"), "stderr": golden(case, "stderr")}
    outcome = {"exit": str(done.returncode), "stdout": done.stdout, "stderr": done.stderr,
               "writes": [f for f in after if before.get(f) != after[f]]}
    for stream in ("stdout", "stderr"):  # the folder is another one each time
        outcome[stream] = outcome[stream].replace(str(folder), "FOLDER")
    return wanted, outcome


def main():
    program = str(pathlib.Path(sys.argv[1]).resolve())
    source, stage = pathlib.Path(sys.argv[2]), sys.argv[3]
    cases = sorted(p.parent for p in (source / "tests" / "commands" / stage).glob("*/case"))
    failed = 0
    for case in cases:
        wanted, outcome = run(program, source, case)
        if "--update" in sys.argv:
            update(case, outcome)
            continue
        for key in wanted:
            if wanted[key] != outcome[key]:
                failed += 1
                print(f"{case.relative_to(source)}: {key}\n  wanted: {wanted[key]!r}\n"
                      f"  came:   {outcome[key]!r}")
    print(f"{len(cases)} cases, {failed} differences")
    sys.exit(1 if failed or not cases else 0)


if __name__ == "__main__":
    main()
