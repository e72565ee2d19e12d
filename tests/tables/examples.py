#!/usr/bin/env python3
"""The examples in the documents are worked again. Usage: examples.py BUILD SOURCE

A block ```table NAME of docs/*.md is given to table_NAME. Where a line "NAME.table:2: ..." stands below
it in the page, that is exactly what must be said; else every case of the block must hold.

An indented line of arithmetic, `24.4 x 10 x 2 = 488.000`, is computed: the answer is met to half its
last digit. Its left side holds numbers, x / + - ( ) ² ³ and sqrt alone; other lines are formulas.
"""
import math
import pathlib
import re
import subprocess
import sys
import tempfile

BLOCK = re.compile(r"^```table (\w+)\n(.*?)^```\n(?:\n    (\w+\.table:\d+: [^\n]*))?", re.S | re.M)
SUM = re.compile(r"^    ((?:[\d. x/+()²³^-]|sqrt)+?) += +(-?\d+(?:\.\d+)?)(?: [a-z³²0-9]+)?$", re.M)
WORKED = ("ground.md", "pegs.md", "dig.md", "base.md", "tables.md")


def table_faults(page, build):
    for name, text, said in BLOCK.findall(page.read_text(encoding="utf-8")):
        with tempfile.TemporaryDirectory() as folder:
            (pathlib.Path(folder) / f"{name}.table").write_text("# from the page\n" + text)
            done = subprocess.run([build / f"table_{name}", f"{name}.table"], cwd=folder, text=True,
                                  capture_output=True, check=False)
        if said and done.stdout.splitlines()[0] != said:
            yield f"{page.name} says: {said}\nthe table: {done.stdout}"
        elif not said and done.returncode != 0:
            yield f"{page.name}: {done.stdout}"


def computed(text):
    python = text.replace("x", "*").replace("²", "**2").replace("³", "**3").replace("^", "**")
    return eval(python, {"__builtins__": {}, "sqrt": math.sqrt})  # of digits and signs alone, see SUM


def sum_faults(page):
    for text, answer in SUM.findall(page.read_text(encoding="utf-8")):
        half = 0.5 * 10.0 ** -len(answer.partition(".")[2])
        if abs(computed(text) - float(answer)) > half * (1 + 1e-9):
            yield f"{page.name}: {text} is {computed(text):.7g}, not {answer}"


def main():
    build, source = (pathlib.Path(a).resolve() for a in sys.argv[1:3])
    faults, blocks, sums = [], 0, 0
    for page in sorted((source / "docs").glob("*.md")):
        text = page.read_text(encoding="utf-8")
        faults += [*table_faults(page, build), *sum_faults(page)]
        blocks, sums = blocks + len(BLOCK.findall(text)), sums + len(SUM.findall(text))
        if page.name in WORKED and not (BLOCK.search(text) and len(SUM.findall(text)) > 2):
            faults.append(f"{page.name}: no example that is worked by hand and by the program")
    listed = (source / "docs" / "tables.md").read_text(encoding="utf-8")
    for table in sorted((source / "tests" / "tables").glob("*.table")):
        if table.stem != "unknown" and f"`{table.name}`" not in listed:
            faults.append(f"tables.md does not name {table.name}")
    print("\n".join([*faults, f"{blocks} blocks of cases, {sums} sums"]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
