#!/usr/bin/env python3
"""record.gpkg of the demo, read by another program, holds what the results hold. Usage: record.py PROGRAM SOURCE

Features are counted against the JSON results; deviations, thicknesses and density ratios are compared
value by value; every layer carries the job's reference system; a second run gives the same bytes.
"""
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


def result(folder, stage):
    return json.loads((folder / "out" / f"{stage}.json").read_text(encoding="utf-8"))


def numbers(layer, field):
    return [float(v) for v in re.findall(rf"^  {field} \(Real\) = (\S+)$", layer, re.M)]


def layers_of(gpkg):
    told = subprocess.run(["ogrinfo", "-ro", "-al", str(gpkg)], capture_output=True, text=True,
                          check=True, timeout=60).stdout
    parts = re.split(r"^Layer name: (\S+)$", told, flags=re.M)[1:]
    return dict(zip(parts[::2], parts[1::2]))


def close(have, want, what):
    check(len(have) == len(want), f"{what}: {len(have)} values for {len(want)}")
    for h, w in zip(have, want):
        check(abs(h - w) <= 1e-9 * max(1, abs(w)), f"{what}: {h} for {w}")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    if not shutil.which("ogrinfo"):
        print("skipped: no ogrinfo")
        return
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name) / "job"
        shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
        run = lambda: subprocess.run([program, "run", ".", "--quiet"], cwd=folder, check=False,
                                     stdout=subprocess.DEVNULL, timeout=120)
        if run().returncode != 1:
            raise SystemExit("the demo's base has faults: exit 1 is wanted")
        gpkg = folder / "out" / "record.gpkg"
        first = gpkg.read_bytes()
        layers = layers_of(gpkg)
        base, fill, pegs, record = (result(folder, s) for s in ("base", "fill", "pegs", "record"))
        counts = {n: int(re.search(r"Feature Count: (\d+)", text)[1]) for n, text in layers.items()}
        rows = {"tank": 2, "toe": 1, "pegs": len(pegs["reference"]),
                "pegs_as_set": len(pegs["as_set"]["points"]), "base_points": 144,
                "layers": sum(len(l["points"]) for l in fill["layers"]),
                "tests": len(fill["tests"]["tests"])}
        for layer, wanted in rows.items():
            check(counts.get(layer) == wanted, f"{layer}: {counts.get(layer)} features for {wanted}")
        for layer, text in layers.items():
            check('ID["EPSG",2157]' in text, f"{layer} has no reference system")
        check(abs(max(numbers(layers["base_points"], "deviation_mm")) - base["deviation_mm"]["high"])
              < 1e-9, "the highest base point")
        close(numbers(layers["layers"], "thickness_mm"),
              [p["thickness_mm"] for l in fill["layers"] for p in l["points"]], "thickness_mm")
        close(numbers(layers["tests"], "percent"), [t["percent"] for t in fill["tests"]["tests"]],
              "percent")
        close(numbers(layers["pegs_as_set"], "along_mm"),
              [p["along_mm"] for p in pegs["as_set"]["points"]], "along_mm")
        built = re.findall(r"POLYGON Z \(\((.*?)\)\)", layers["tank"])[1].split(",")
        close([float(v) for corner in built[:4] for v in corner.split()],
              [v for corner in record["tank_built"] for v in corner], "tank as built")
        run()
        check(gpkg.read_bytes() == first, "a second run gives other bytes")
    print("\n".join(FAULTS) if FAULTS else "record.gpkg holds what the results hold")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
