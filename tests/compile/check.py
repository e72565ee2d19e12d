#!/usr/bin/env python3
"""Compiles every line of refused.txt and allowed.txt in its own function, in one run of the compiler.

Each line of refused.txt must be an error at that line, each line of allowed.txt must not; and every
pair of two different quantities must stand in refused.txt at least once.
Usage: check.py COMPILER SOURCE_FOLDER
"""
import itertools
import pathlib
import re
import subprocess
import sys
import tempfile

NAMES = {
    "length": "Length", "area": "Area", "volume": "Volume", "bank": "BankVolume",
    "loose": "LooseVolume", "rolled": "CompactedVolume", "angle": "Angle", "bearing": "Bearing",
    "easting": "Easting", "northing": "Northing", "level": "Elevation", "fall": "Fall",
    "batter": "Batter", "ratio": "Ratio", "force": "Force", "weight": "UnitWeight",
    "density": "Density", "number": "double",
}
HEAD = '#include "quantity/slope.h"\n#include "quantity/tolerance.h"\nusing namespace squaredig;\n'


def lines_of(path):
    return [l for l in path.read_text().splitlines() if l.strip() and not l.startswith("#")]


def failing_lines(compiler, source, snippets):
    """The numbers of the snippets at which the compiler reports an error."""
    parameters = ", ".join(f"[[maybe_unused]] {kind} {name}" for name, kind in NAMES.items())
    body = "".join(f"void f{i}({parameters}) {{ (void)({s}); }}\n" for i, s in enumerate(snippets))
    with tempfile.TemporaryDirectory() as folder:
        unit = pathlib.Path(folder, "snippets.cpp")
        unit.write_text(HEAD + body)
        run = subprocess.run([compiler, "-std=c++20", "-fsyntax-only", "-fmax-errors=0",
                              "-fno-diagnostics-show-caret", f"-I{source}/src", str(unit)],
                             capture_output=True, text=True, check=False,
                             env={"PATH": "/usr/bin:/bin", "LC_ALL": "C"})
    first = HEAD.count("\n") + 1
    return {int(m) - first for m in re.findall(r"snippets\.cpp:(\d+):\d+: error:", run.stderr)}


def main():
    compiler, source = sys.argv[1], pathlib.Path(sys.argv[2])
    here = source / "tests" / "compile"
    refused, allowed = lines_of(here / "refused.txt"), lines_of(here / "allowed.txt")
    failing = failing_lines(compiler, source, refused + allowed)
    faults = [f"compiles, but must not: {s}" for i, s in enumerate(refused) if i not in failing]
    faults += [f"must compile: {s}" for i, s in enumerate(allowed, len(refused)) if i in failing]
    seen = {frozenset(w for w in re.findall(r"\w+", s) if w in NAMES) for s in refused}
    faults += [f"no line refuses {a} with {b}" for a, b in itertools.combinations(NAMES, 2)
               if frozenset((a, b)) not in seen]
    print("\n".join(faults) or f"{len(refused)} lines refused, {len(allowed)} allowed")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
