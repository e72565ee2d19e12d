#!/usr/bin/env python3
"""Every reader of field files has a fuzzer, and every fuzzer a line in the ledger. Usage: every_reader.py SOURCE

A reader is a function read_... that a header of formats declares with a SourceFile, or one of job with the
text of a job.
"""
import pathlib
import re
import sys

READER = re.compile(r"\b(read_\w+)\(\s*(?:const SourceFile&|(?:const )?std::string(?:_view)?&?)")
# what the readers are made of; the whole of a file and the events of its text
PARTS = {"read_whole", "read_features", "read_dxf", "read_xml"}


def main():
    source = pathlib.Path(sys.argv[1])
    readers = {name for room in ("formats", "job") for path in (source / "src" / room).glob("*.h")
               for name in READER.findall(path.read_text(encoding="utf-8"))} - PARTS
    targets = sorted((source / "tests" / "fuzz").glob("fuzz_*.cpp"))
    fuzzed = {name for path in targets for name in re.findall(r"\bread_\w+", path.read_text(encoding="utf-8"))}
    ledger = (source / "tests" / "fuzz" / "LEDGER.md").read_text(encoding="utf-8")
    faults = [f"no fuzzer reads by {name}" for name in sorted(readers - fuzzed)]
    faults += [f"{path.stem} is not in the ledger" for path in targets if f"| `{path.stem}` |" not in ledger]
    faults += [] if len(readers) > 15 else [f"only {len(readers)} readers are found"]
    print("\n".join(faults) if faults else f"{len(readers)} readers, {len(targets)} fuzzers")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
