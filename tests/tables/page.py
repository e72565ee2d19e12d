#!/usr/bin/env python3
"""The examples of docs/tables.md are run as cases. Usage: page.py BUILD SOURCE

A block ```table NAME is given to table_NAME. Where a line "NAME.table:2: ..." stands below it in the
page, that is exactly what must be said; else every case of the block must hold.
"""
import pathlib
import re
import subprocess
import sys
import tempfile

BLOCK = re.compile(r"^```table (\w+)\n(.*?)^```\n(?:\n    (\w+\.table:\d+: [^\n]*))?", re.S | re.M)


def main():
    build, source = (pathlib.Path(a).resolve() for a in sys.argv[1:3])
    page = (source / "docs" / "tables.md").read_text(encoding="utf-8")
    faults, blocks = [], BLOCK.findall(page)
    for name, text, said in blocks:
        with tempfile.TemporaryDirectory() as folder:
            (pathlib.Path(folder) / f"{name}.table").write_text("# from the page\n" + text)
            done = subprocess.run([build / f"table_{name}", f"{name}.table"], cwd=folder, text=True,
                                  capture_output=True, check=False)
        if said and done.stdout.splitlines()[0] != said:
            faults.append(f"the page says:  {said}\nthe table: {done.stdout}")
        elif not said and done.returncode != 0:
            faults.append(f"{name}: {done.stdout}")
    for table in sorted((source / "tests" / "tables").glob("*.table")):
        if table.stem != "unknown" and f"`{table.name}`" not in page:
            faults.append(f"the page does not name {table.name}")
    print("\n".join(faults) if faults else f"{len(blocks)} blocks")
    sys.exit(1 if faults or len(blocks) < 2 or not any(b[2] for b in blocks) else 0)


if __name__ == "__main__":
    main()
