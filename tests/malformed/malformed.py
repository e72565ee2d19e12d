#!/usr/bin/env python3
"""Public corpora of malformed files, each through the reader of its kind.
Usage: malformed.py READ_FILE SOURCE [--update]

The files stand in ../shared/data/malformed beside the project; without them this says so and ends. Each
file is read by a process of its own that may use 2 s of processor time and 1 GB: as points, and where
its kind has them as strings and as a surface. It is refused by lines with its name and place, or taken
with the numbers that stand in verdicts.txt, one line each: file, role, what came of it. A file that is
taken and that other programs read as well must have their numbers: LAS by the table of the
specification, rasters by gdalinfo.
"""
import json
import pathlib
import re
import resource
import shutil
import struct
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).parent
SECONDS = 2
KINDS = {"csv": ((".csv",), ("points", "strings")),
         "dxf": ((".dxf",), ("points", "strings", "surface")),
         "geojson": ((".geojson", ".json"), ("points", "strings")),
         "landxml": ((".xml",), ("points", "strings", "surface")),
         "las": ((".las", ".laz"), ("points",)),
         "tiff": ((".tif",), ("points",)),
         "geoid": ((".tif", ".gtx"), ("points",)),
         "xml": ((), ("points", "surface"))}
# what is no field file of any kind stands beside those that are
NOT_READ = re.compile(r"\.(result|dtd|ent)$|INDEX\.csv$|csv-spectrum/.*\.json$|\.gtx$")
FAULTS = []


def limits():
    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


def verdict(reader, role, path, name):
    try:
        done = subprocess.run([reader, role, path], capture_output=True, text=True, check=False,
                              preexec_fn=limits, timeout=120, errors="replace")
    except subprocess.TimeoutExpired:
        return "hangs"
    if done.returncode not in (0, 2):
        return f"ends with {done.returncode}"
    if done.stderr:
        FAULTS.append(f"{name} {role}: said {done.stderr[:200]!r}")
    first = done.stdout.splitlines()[0] if done.stdout else ""
    if done.returncode == 2:
        for line in done.stdout.splitlines():
            if not re.match(r"[^\n]+:\d+:\d+: .+; .+; .+$", line):
                FAULTS.append(f"{name} {role}: no line of a refusal: {line!r}")
        return "refused " + first.partition(":")[2]
    return "taken " + first


def las_truth(path):
    """Counts and extent of a LAS file by the specification's table, in its own units, without the
    points that are marked withheld."""
    b = path.read_bytes()
    minor, start, stride = b[25], struct.unpack_from("<I", b, 96)[0], struct.unpack_from("<H", b, 105)[0]
    count = struct.unpack_from("<Q", b, 247)[0] if minor == 4 else struct.unpack_from("<I", b, 107)[0]
    withheld = 0x80 if b[104] < 6 else 0x04
    scale, offset = struct.unpack_from("<3d", b, 131), struct.unpack_from("<3d", b, 155)
    rows = [start + i * stride for i in range(count)]
    at = [struct.unpack_from("<3i", b, row) for row in rows if not b[row + 15] & withheld]
    box = [[min(p[k] for p in at) * scale[k] + offset[k], max(p[k] for p in at) * scale[k] + offset[k]]
           for k in range(3)]
    return count, len(at), box


def tiff_truth(path):
    done = subprocess.run(["gdalinfo", "-json", "-stats", "-nomd", path], capture_output=True,
                          text=True, check=False, env={"GDAL_PAM_ENABLED": "NO", "PATH": "/usr/bin:/bin"})
    band = json.loads(done.stdout)["bands"][0]
    return band["minimum"], band["maximum"]


def numbers(text):
    """Counts and the box of a taken line."""
    found = re.search(r"read (\d+) used (\d+) \w+ (\d+) east (\S+) north (\S+) height (\S+)", text)
    boxes = [[float(v) for v in found[i].split("..")] for i in (4, 5, 6)]
    return int(found[1]), int(found[2]), boxes


def near(have, want):
    """Two ranges, the wanted one in metres or in feet of either kind."""
    return any(all(abs(a - b * unit) <= 1e-6 * max(1, abs(a)) for a, b in zip(have, want))
               for unit in (1, 0.3048, 1200 / 3937))


def check_numbers(kind, path, name, text):
    read, used, boxes = numbers(text)
    if kind == "las":
        count, kept, box = las_truth(path)
        if (read, used) != (count, kept) or not all(near(h, w) for h, w in zip(boxes, box)):
            FAULTS.append(f"{name}: {text}, by the specification {kept} of {count} points in {box}")
    if kind in ("tiff", "geoid"):
        truth = tiff_truth(path)
        if not near(boxes[2], truth):
            FAULTS.append(f"{name}: {text}, by gdalinfo {truth}")


def table(reader, data):
    rows = []
    for path in sorted(p for p in data.rglob("*") if p.is_file()):
        name = path.relative_to(data)
        kind = name.parts[0]
        endings, roles = KINDS[kind]
        if NOT_READ.search(str(name)):
            continue
        with tempfile.TemporaryDirectory() as folder:
            copy = path
            if kind == "xml" or path.suffix not in endings:
                # a document by another ending is given as what it is
                copy = pathlib.Path(folder, path.name + (endings[0] if endings else ".xml"))
                shutil.copy(path, copy)
            for role in roles:
                said = verdict(reader, role, copy, name)
                if said.startswith("taken"):
                    check_numbers(kind, path, name, said)
                if said.startswith(("hangs", "ends")):
                    FAULTS.append(f"{name} {role}: {said}")
                rows.append(f"{name} | {role} | {said}")
    return rows


def main():
    reader, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).resolve()
    data = source.parent / "shared" / "data" / "malformed"
    if not data.exists():
        print(f"skipped: no {data}")
        return
    before = {p: p.stat().st_mtime_ns for p in data.rglob("*")}
    rows = table(reader, data)
    if {p: p.stat().st_mtime_ns for p in data.rglob("*")} != before:
        FAULTS.append("reading changed the folder")
    known = HERE / "verdicts.txt"
    if "--update" in sys.argv:
        known.write_text("\n".join(rows) + "\n", encoding="utf-8")
    wanted = known.read_text(encoding="utf-8").splitlines()
    FAULTS.extend(f"- {row}" for row in wanted if row not in set(rows))
    FAULTS.extend(f"+ {row}" for row in rows if row not in set(wanted))
    taken = sum("| taken " in row for row in rows)
    print("\n".join(rows))
    print("\n".join([*FAULTS, f"{len(rows)} verdicts, {taken} taken, {len(FAULTS)} complaints"]))
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
