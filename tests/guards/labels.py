#!/usr/bin/env python3
"""Labels do nothing in the files that carry them. Usage: labels.py PROGRAM SOURCE

The demo is run with labels that spreadsheets, browsers, XML readers, drawings and databases could take for
more than text, in every place where the job and its files name something, and once with plain ones. What
is written has the same bones both times: the same kinds of elements and attributes in pages and documents,
the same groups in drawings, the same tables and rows in GeoPackages, the same rows in tables, and no cell
that a spreadsheet would run; and nothing is written beyond the output folder. Each file is read by Python's
own libraries.
Source: OWASP, "CSV Injection", for the leading characters of a formula.
"""
import collections
import csv
import html.parser
import io
import json
import pathlib
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import xml.etree.ElementTree

PLAIN = "plain "
HOSTILE = ["../../beyond/..\\x", '=HYPERLINK("http://a.invalid","x")',
           "</script><script>x</script><img onerror='x'>\"&]]>",
           "'); DROP TABLE pegs;-- %%d\\U+000A{\\P}", "@SUM(1+1)*cmd|' /C x'!A0"]
# in tables a quoted cell may also hold line breaks
CAUTION = ("li", ("class",))  # the caution about a name that reads as a formula
BROKEN = "x\n  0\nPOINT\n  8\n0\n\n=1+1"
FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


class Bones(html.parser.HTMLParser):
    def __init__(self):
        super().__init__()
        self.kinds = set()
        self.scripts = 0

    def handle_starttag(self, tag, attrs):
        self.kinds.add((tag, tuple(sorted(name for name, _ in attrs))))
        self.scripts += tag == "script"


def of_page(path):
    bones = Bones()
    bones.feed(path.read_text(encoding="utf-8"))
    return bones.scripts, sorted(bones.kinds | {CAUTION})


def of_document(path):
    text = path.read_bytes()
    root = xml.etree.ElementTree.fromstring(text)
    return b"<!" in text, [(e.tag, sorted(e.attrib)) for e in root.iter()]


def of_drawing(path):
    lines = path.read_text(encoding="utf-8").split("\n")
    codes = [int(line) for line in lines[0:-1:2]]
    kinds = [value for code, value in zip(codes, lines[1::2]) if code == 0]
    return codes, kinds


def of_package(path):
    with sqlite3.connect(f"file:{path}?mode=ro", uri=True) as file:
        tables = file.execute("SELECT type, name, sql FROM sqlite_master ORDER BY 1, 2").fetchall()
        names = [name for kind, name, _ in tables if kind == "table"]
        return tables, [file.execute(f'SELECT count(*) FROM "{name}"').fetchone() for name in names]


def runs(cell):
    return cell[:1] in "=+-@\t\r\n" and cell != "" and not re.fullmatch(r"[-+]?\d+(\.\d*)?(e[-+]?\d+)?", cell)


def of_table(path):
    rows = list(csv.reader(io.StringIO(path.read_text(encoding="utf-8"), newline="")))
    for row in rows:
        for cell in row:
            check(not runs(cell), f"{path.name}: the cell {cell!r} would run")
    return [len(row) for row in rows]


def of_map(path):
    features = json.loads(path.read_text(encoding="utf-8"))["features"]
    return [(f["geometry"]["type"], sorted(f["properties"])) for f in features]


def of_pdf(path):
    data = re.sub(rb"\bstream\b.*?endstream", b"", path.read_bytes(), flags=re.DOTALL)
    return sorted(set(re.findall(rb"/(JavaScript|JS|Launch|URI|SubmitForm|GoToR|AA)[\s(<\[/]", data)))


BONES = {".html": of_page, ".xml": of_document, ".dxf": of_drawing, ".gpkg": of_package, ".csv": of_table,
         ".geojson": of_map, ".pdf": of_pdf}


class Job:
    """The demo with a label of one kind in every place that names something."""

    def __init__(self, program, source, folder, label, broken):
        self.program, self.folder, self.label = program, folder, label
        self.used = collections.Counter()
        shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
        self.names = {"inlet": label + "1", "outlet": label + "2", "access": label + "3", "cap 1": label + "4",
                      "CP1": label + "5", "CP2": label + "6", "Alderbrook school, car park tank": label + "7",
                      "geotechnical report 12 (invented), 2026-02-16": label + "8"}
        self.job()
        self.table("control.csv", {0: self.names.get})
        for file, column in (("ground.csv", 0), ("as-dug.csv", 0), ("cap1.csv", 0)):
            self.table(file, {column: lambda old: broken + old})
        for file in ("kerb.csv", "services.csv", "boundary.csv", "outline.csv"):
            self.table(file, {0: lambda old: label + old})

    def job(self):
        path = self.folder / "job.toml"
        text = path.read_text(encoding="utf-8")
        for old, new in self.names.items():
            wanted = '"' + new.replace("\\", "\\\\").replace('"', '\\"') + '"'
            self.used[old] = text.count(f'"{old}"')
            text = text.replace(f'"{old}"', wanted)
        check(all(self.used.values()), f"not in the job: {[n for n, k in self.used.items() if not k]}")
        for key in ("revision", "drawing", "prepared_by"):
            wanted = (self.label + key).replace("\\", "\\\\").replace('"', '\\"')
            text = text.replace("[job]\n", f'[job]\n{key} = "{wanted}"\n')
        path.write_text(text, encoding="utf-8")

    def table(self, file, change):
        path = self.folder / file
        lines = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
        rows = list(csv.reader(lines))
        for row in rows[1:]:
            for column, new in change.items():
                row[column] = new(row[column]) or row[column]
        with path.open("w", encoding="utf-8", newline="") as out:
            csv.writer(out, quoting=csv.QUOTE_MINIMAL).writerows(rows)

    def run(self):
        before = set(self.folder.parent.rglob("*"))
        done = subprocess.run([self.program, "run", ".", "--quiet"], cwd=self.folder, capture_output=True,
                              text=True, check=False, timeout=300)
        if done.returncode not in (0, 1):
            raise SystemExit(f"{self.label!r}: exit {done.returncode}: {done.stderr}")
        beyond = [p for p in set(self.folder.parent.rglob("*")) - before if p.name != "out" and p.parent.name != "out"]
        check(not beyond, f"{self.label!r}: written beyond the output folder: {beyond}")
        return {path.name: BONES[path.suffix](path) for path in sorted((self.folder / "out").iterdir())
                if path.suffix in BONES}

    def carried(self):
        """Files whose text holds the label, letter by letter once their own spelling is undone."""
        out = self.folder / "out"
        result = json.loads((out / "pegs.json").read_text(encoding="utf-8"))
        check(result["pipes"][0]["name"] == self.names["inlet"], f"pegs.json changes {self.names['inlet']!r}")
        with sqlite3.connect(f"file:{out / 'record.gpkg'}?mode=ro", uri=True) as file:
            text = "\n".join(file.iterdump())
        check(self.label.replace("'", "''") in text, f"record.gpkg does not hold {self.label!r}")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    with tempfile.TemporaryDirectory() as name:
        plain = Job(program, source, pathlib.Path(name, "plain"), PLAIN, PLAIN).run()
        check(len(plain) > 20, f"only {len(plain)} files were written")
        for number, label in enumerate(HOSTILE):
            job = Job(program, source, pathlib.Path(name, str(number)), label, BROKEN if number == 1 else label)
            bones = job.run()
            check(sorted(bones) == sorted(plain), f"{label!r}: files {sorted(bones)}")
            for file in plain:
                check(bones.get(file) == plain[file], f"{label!r}: {file} has other bones")
            job.carried()
    print("\n".join(FAULTS) if FAULTS else f"{len(plain)} files have the same bones with {len(HOSTILE)} kinds of label")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
