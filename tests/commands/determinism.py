#!/usr/bin/env python3
"""The same inputs give the same bytes. Usage: determinism.py PROGRAM SOURCE

The demo job is run with one thread and with two, again into the same folder, in another folder, from
another working folder and in other locales and time zones: every file is the same each time. And what
--json prints is the object of the file.
"""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile


def files(folder):
    return {p.name: p.read_bytes() for p in sorted(folder.iterdir())}


def run(program, arguments, cwd, **environment):
    done = subprocess.run([program, *arguments], cwd=cwd, capture_output=True, check=False,
                          env={**os.environ, **environment}, timeout=300)
    if done.returncode not in (0, 1):
        raise SystemExit(f"{arguments}: exit {done.returncode}: {done.stderr.decode()}")
    return done.stdout


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    faults = []
    with tempfile.TemporaryDirectory() as name:
        top = pathlib.Path(name)
        for folder in ("one", "two words"):
            shutil.copytree(source / "demo" / "alderbrook", top / folder,
                            ignore=shutil.ignore_patterns("out"))
        run(program, ["run", ".", "--quiet", "--threads", "1"], top / "one")
        first = files(top / "one" / "out")
        def same(what, folder):
            again = files(folder)
            for file in sorted(first.keys() | again.keys()):
                if first.get(file) != again.get(file):
                    faults.append(f"{what}: {file} differs")

        run(program, ["run", "job.toml", "--quiet", "--threads", "2"], top / "one")
        same("two threads, second run", top / "one" / "out")
        run(program, ["run", str(top / "two words"), "--quiet"], "/tmp", LC_ALL="de_DE.UTF-8",
            TZ="Pacific/Auckland")
        same("another folder, working folder, locale and time zone", top / "two words" / "out")
        run(program, ["run", "one/job.toml", "--quiet", "--out", str(top / "elsewhere")], top)
        same("another output folder", top / "elsewhere")

        whole = json.loads(run(program, ["run", "one", "--json", "--quiet"], top))
        if not {"ground", "pegs", "dig", "base"} <= whole.keys():
            faults.append(f"run --json holds only {list(whole)}")
        if whole != {stage: json.loads(first[f"{stage}.json"]) for stage in whole}:
            faults.append("run --json prints other objects than the files")
        for stage in whole:
            printed = run(program, [stage, "one", "--json", "--quiet"], top)
            same(f"{stage} alone", top / "one" / "out")
            if json.loads(printed) != json.loads(first[f"{stage}.json"]):
                faults.append(f"{stage} --json prints another object than {stage}.json")
    print("\n".join(faults) or f"{len(first)} files, the same every time")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
