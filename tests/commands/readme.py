#!/usr/bin/env python3
"""Runs every command shown in README.md and docs/*.md and compares its output.
Usage: readme.py PROGRAM SOURCE [--only PAGE] [--update] [--root FOLDER]

A page's blocks are followed from top to bottom in one folder that holds the demo job and `broken`, a
job with faults in it; after `console PATH` the folder is a copy of that one of the project (a case of
tests/commands: with its job and edits), or where another page ends that is followed to there first.

  ```console      lines "$ command", each followed by exactly what it prints, standard error included
  ```toml FILE    lines "key = value" under their table: in FILE the line "#key =" becomes that
  ```csv FILE     rows that are typed in below what FILE holds

A command named in other text must exist, and a test named by `ctest -R NAME` too. `demo/run` stands
for the command it ends with; the build before it is another matter. With --root the commands run in
that folder as root of the file system, with the program installed there.
"""
import argparse
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

import run_cases

BLOCK = re.compile(r"^```(console|toml|csv)( [^\n]+)?\n(.*?)^```$", re.S | re.M)
UNKNOWN_BLOCK = re.compile(r"^```(?!console|toml |csv |table |$)(\S*)|^```\n(?=[^`]*^\$ )", re.M)
NAMED = re.compile(r"(?:^    |`)squaredig ([a-z]+)\b", re.M)


def prepare(folder, source):
    shutil.copytree(source / "demo", folder / "demo", ignore=shutil.ignore_patterns("out"))
    broken = folder / "broken"
    shutil.copytree(folder / "demo" / "alderbrook", broken)
    job = broken / "job.toml"
    job.write_text(job.read_text().replace("bulking = 1.25", "bulkiness = 1.25")
                   .replace('batter  = "1:1"', 'batter  = "1 in 2"'))


class Session:
    """A folder and the commands that are run in it, one after another."""

    def __init__(self, folder, program, source, root):
        self.folder, self.program, self.source, self.root = folder, program, source, root
        self.counted = 0
        prepare(folder, source)

    def enter(self, path):
        """Go to a copy of a folder of the project, or to where a page of it ends."""
        self.folder = pathlib.Path(tempfile.mkdtemp(dir=self.folder))
        if path.endswith(".md"):
            for match in BLOCK.finditer((self.source / path).read_text(encoding="utf-8")):
                self.block(match)
            return
        case = self.source / path
        if (case / "case").exists():
            run_cases.prepare(case, run_cases.read_case(case / "case"), self.source, self.folder)
        else:
            shutil.copytree(case, self.folder, dirs_exist_ok=True)

    def command(self, shown):
        if shown == "demo/run":
            script = (self.source / "demo" / "run").read_text()
            shown = re.search(r"^build/(squaredig run [^|]*?) \|\|", script, re.M).group(1)
        inside = f"/{self.folder.relative_to(self.root)}" if self.root else self.folder
        text = f"cd {inside}\n{shown}\nprintf '\\0%s' \"$PWD\"\n"
        path = f"{self.program.parent}:{os.environ['PATH']}" if self.program else os.environ["PATH"]
        done = subprocess.run([*(["chroot", self.root] if self.root else []), "bash", "-c", text],
                              env={**os.environ, "PATH": path}, stdin=subprocess.DEVNULL, text=True,
                              stdout=subprocess.PIPE, stderr=subprocess.STDOUT, check=False,
                              timeout=300)
        said, _, place = done.stdout.rpartition("\0")
        self.folder = pathlib.Path(self.root + place if self.root else place)
        self.counted += 1
        return said

    def console(self, block):
        return "".join(line + "\n" + self.command(line[2:]) for line in block.splitlines()
                       if line.startswith("$ "))

    def fill(self, name, block):
        """Take the # away and write the value, key by key, as a person does with an editor."""
        lines = (self.folder / name).read_text(encoding="utf-8").splitlines()
        at = 0
        for wanted in block.splitlines():
            bare = wanted if wanted.startswith("[") else wanted.split("=")[0].strip() + " ="
            try:
                at = next(i for i in range(0 if wanted.startswith("[") else at, len(lines))
                          if lines[i].lstrip("#").strip().startswith(bare))
            except StopIteration:
                raise SystemExit(f"{name} has no line \"#{bare}\" to be filled in") from None
            lines[at] = wanted
        (self.folder / name).write_text("\n".join(lines) + "\n", encoding="utf-8")

    def block(self, match):
        kind, where, text = match[1], (match[2] or "").strip(), match[3]
        if kind == "console":
            if where:
                self.enter(where)
            text = self.console(text)
        elif kind == "toml":
            self.fill(where, text)
        else:
            with open(self.folder / where, "a", encoding="utf-8") as file:
                file.write(text)
        return f"```{kind}{match[2] or ''}\n{text}```"


def named_faults(page, shown, program):
    for command in sorted(set(NAMED.findall(shown))):
        if subprocess.run([program, command, "--help"], capture_output=True, check=False).returncode:
            yield f"{page}: names a command {command}, which is none"
    for test in re.findall(r"`ctest (?:--test-dir \S+ )?-R (\S+)`", shown):
        done = subprocess.run(["ctest", "--test-dir", program.parent, "-N", "-R", test],
                              capture_output=True, text=True, check=False)
        if "Total Tests: 0" in done.stdout or done.returncode:
            yield f"{page}: names a test {test}, which is none"
    for block in UNKNOWN_BLOCK.finditer(shown):
        yield f"{page}: a block with commands that nobody runs: {block[0]!r}"


def compare(page, shown, real):
    for wanted, came in zip(shown.splitlines(), real.splitlines()):
        if wanted != came:
            return [f"{page} says:  {wanted}\nthe program: {came}"]
    return [f"{page} shows more or less than the program says"] if shown != real else []


def follow(path, options):
    shown = path.read_text(encoding="utf-8")
    with tempfile.TemporaryDirectory(dir=options.root and options.root + "/root") as name:
        session = Session(pathlib.Path(name).resolve(), options.program, options.source, options.root)
        real = BLOCK.sub(session.block, shown)
    if options.update:
        path.write_text(real, encoding="utf-8")
        return session.counted, []
    page = path.relative_to(options.source)
    named = [] if options.root else named_faults(page, shown, options.program)
    return session.counted, [*compare(page, shown, real), *named]


def arguments():
    reader = argparse.ArgumentParser()
    reader.add_argument("program", type=lambda p: pathlib.Path(p).resolve())
    reader.add_argument("source", type=lambda p: pathlib.Path(p).resolve())
    reader.add_argument("--only")
    reader.add_argument("--update", action="store_true")
    reader.add_argument("--root")
    return reader.parse_args()


def main():
    options = arguments()
    pages = [options.source / "README.md", *sorted((options.source / "docs").rglob("*.md"))]
    pages = [p for p in pages if not options.only or str(p.relative_to(options.source)) == options.only]
    counted, faults = 0, []
    for page in pages:
        commands, wrong = follow(page, options)
        counted += commands
        faults += wrong
    print("\n".join([*faults, f"{len(pages)} pages, {counted} commands"]))
    sys.exit(1 if faults or not counted else 0)


if __name__ == "__main__":
    main()
