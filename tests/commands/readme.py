#!/usr/bin/env python3
"""Runs every command shown in README.md and compares its output. Usage: readme.py PROGRAM SOURCE [--update]

A block ```console holds lines "$ command", each followed by exactly what it prints, standard error
included. The commands run in a folder with the demo job, and with `broken`, a job with faults in it.
`demo/run` stands for the command it ends with; the build before it is another matter.
"""
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

BLOCK = re.compile(r"```console\n(.*?)```", re.S)


def prepare(folder, source):
    shutil.copytree(source / "demo", folder / "demo", ignore=shutil.ignore_patterns("out"))
    broken = folder / "broken"
    shutil.copytree(folder / "demo" / "alderbrook", broken)
    job = broken / "job.toml"
    job.write_text(job.read_text().replace("bulking = 1.25", "bulkiness = 1.25")
                   .replace('batter  = "1:1"', 'batter  = "1 in 2"'))


def command_of(shown, program, source):
    if shown == "demo/run":
        script = (source / "demo" / "run").read_text()
        shown = re.search(r"^build/(squaredig run [^|]*?) \|\|", script, re.M).group(1)
    return re.sub(r"^squaredig\b", str(program), shown)


def run_block(block, program, source, folder):
    text = ""
    for line in block.splitlines():
        if line.startswith("$ "):
            done = subprocess.run(command_of(line[2:], program, source), cwd=folder, shell=True,
                                  stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
                                  check=False, timeout=120)
            text += line + "\n" + done.stdout
    return text


def main():
    program, source = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    readme = source / "README.md"
    shown = readme.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        prepare(folder, source)
        real = BLOCK.sub(lambda m: "```console\n" + run_block(m.group(1), program, source, folder) +
                         "```", shown)
    if "--update" in sys.argv:
        readme.write_text(real, encoding="utf-8")
    elif real != shown:
        for wanted, came in zip(shown.splitlines(), real.splitlines()):
            if wanted != came:
                raise SystemExit(f"README.md says: {wanted}\nthe program:    {came}")
        raise SystemExit("README.md shows more or less than the program says")
    print(f"{len(BLOCK.findall(shown))} blocks, {shown.count(chr(10) + '$ ')} commands")


if __name__ == "__main__":
    main()
