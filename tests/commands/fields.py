#!/usr/bin/env python3
"""docs/results.md and the JSON of the demo job name the same fields. Usage: fields.py PROGRAM SOURCE

Every field that a result holds is documented; every documented field is there, unless its list is empty
or its object null. So that few are, the job is given a stone among the ground points, a drain across the
kerb, a fence in the crest, a vertical side, a survey during the dig, a compaction test of the base and an
outlet level. The stage `field` runs on a job with every kind of field book.
"""
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

STAGES = ("ground", "field", "pegs", "dig", "base", "fill", "record")
FIELD_JOB = "tests/commands/field/all-books"  # the demo job has no field books


def documented(text):
    """Field paths by section: "Every object", "ground.json", ..."""
    fields = {}
    for section in re.split(r"^## ", text, flags=re.M)[1:]:
        name = section.splitlines()[0]
        cells = [row.split("|")[1] for row in section.splitlines() if row.startswith("| `")]
        fields[name] = {field for cell in cells for field in re.findall(r"`([^`]+)`", cell)}
    return fields


def leaves(value, path=""):
    """Paths of the values in an object; a list of objects is `list[]`; an empty one is `list[]` alone."""
    if isinstance(value, dict) and value:
        for key, inner in value.items():
            yield from leaves(inner, f"{path}.{key}" if path else key)
    elif isinstance(value, list) and value and all(isinstance(v, dict) for v in value):
        for inner in value:
            yield from leaves(inner, path + "[]")
    else:
        yield path, value in (None, [], {})


def enrich(folder):
    def append(name, text):
        path = folder / name
        path.write_text(path.read_text(encoding="utf-8") + text, encoding="utf-8")

    append("ground.csv", "STONE,715812.0,734690.0,65.900,GL\n")
    append("kerb.csv", "drain,715815.0,734700.0,64.40\ndrain,715835.0,734725.0,64.10\n")
    append("boundary.csv", "fence,715827.0,734690.0,\nfence,715827.0,734702.0,\n")
    (folder / "tests.csv").write_text("layer,easting,northing,dry_density,maximum_dry_density\n"
                                      "base,715840.0,734705.0,1.81,1.89\n", encoding="utf-8")
    append("job.toml", '\n[progress]\nsurveys = [{ name = "week 1", points = "week1.csv" }]\n')
    rows = [row.split(",") for row in (folder / "ground.csv").read_text().splitlines()[2:]]
    (folder / "week1.csv").write_text("point,easting,northing,height\n" + "".join(
        f"{p},{e},{n},{float(h) - 3.0:.3f}\n" for p, e, n, h, code in rows if code == "GL"),
        encoding="utf-8")
    job = folder / "job.toml"
    job.write_text(job.read_text(encoding="utf-8").replace(
        'void_percent = 95.0', 'void_percent = 95.0\noutlet_level = 63.2').replace(
        'codes  = ["BASE"]', 'codes  = ["BASE"]\ntests = "tests.csv"').replace(
        'batter  = "1:1"', 'batter  = { AB = "0:1", BC = "1:1", CD = "1:1", DA = "1:1" }'),
        encoding="utf-8")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    fields = documented((source / "docs" / "results.md").read_text(encoding="utf-8"))
    faults = []
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name, "job")
        shutil.copytree(source / "demo" / "alderbrook", folder)
        enrich(folder)
        field = pathlib.Path(name, "field")
        shutil.copytree(source / FIELD_JOB, field)
        for stage in STAGES:
            job = field if stage == "field" else folder
            done = subprocess.run([program, stage, str(job), "--json", "--quiet"], text=True,
                                  capture_output=True, check=False)
            if done.returncode not in (0, 1):
                raise SystemExit(f"{stage}: exit {done.returncode}: {done.stderr}")
            wanted = fields["Every object"] | fields[f"{stage}.json"]
            seen = dict(leaves(json.loads(done.stdout)))
            unsaid = {path for path, empty in seen.items() if empty}
            for path in seen:
                told_within = any(f.startswith((path + "[].", path + ".")) for f in wanted)
                if path not in wanted and not (path in unsaid and told_within):
                    faults.append(f"{stage}.json holds {path}; docs/results.md does not name it")
            for field in sorted(wanted - seen.keys()):
                if not any(field.startswith((p + "[].", p + ".")) for p in unsaid):
                    faults.append(f"docs/results.md names {field}; {stage}.json does not hold it")
    print("\n".join(faults) or "every field is named")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
