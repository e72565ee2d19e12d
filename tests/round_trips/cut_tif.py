#!/usr/bin/env python3
"""cut.tif read back by GDAL's own programs. Usage: cut_tif.py PROGRAM SOURCE

Along the tank: every cell of cells.csv is found where its centre lies by the raster's geotransform, with
its cut to 32-bit rounding, and no other cell holds a value. North up: the rows run east and the columns
south on whole multiples of the cell, and the cut at a cell's centre is that of the other raster there
as nearly as the ground and the batters slope over half a cell.
"""
import csv
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile

FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


def dug(program, folder, raster):
    job = folder / "job.toml"
    text = job.read_text(encoding="utf-8")
    job.write_text(text.replace("[dig]\n", f'[dig]\nraster = "{raster}"\n', 1), encoding="utf-8")
    done = subprocess.run([program, "dig", ".", "--quiet"], cwd=folder, capture_output=True, text=True,
                          check=False, timeout=120)
    job.write_text(text, encoding="utf-8")
    if done.returncode not in (0, 1):
        raise SystemExit(done.stderr)
    return folder / "out" / "cut.tif"


def read(tif):
    info = json.loads(subprocess.run(["gdalinfo", "-json", tif], capture_output=True, text=True,
                                     check=True).stdout)
    grid = tif.with_suffix(".txt")
    subprocess.run(["gdal_translate", "-q", "-of", "AAIGrid", "-co", "FORCE_CELLSIZE=YES",
                    "-co", "SIGNIFICANT_DIGITS=12", "-a_ullr", "0", str(info["size"][1]),
                    str(info["size"][0]), "0", tif, grid], check=True)
    lines = grid.read_text().splitlines()
    rows = [[float(v) for v in line.split()] for line in lines if len(line.split()) == info["size"][0]
            and not line[:1].isalpha()]
    return info, rows


def along_the_tank(tif, cells):
    info, rows = read(tif)
    check("PROJCRS" in info["coordinateSystem"]["wkt"], "the raster carries no projected CRS")
    check(info["bands"][0]["type"] == "Float32", info["bands"][0]["type"])
    empty = info["bands"][0]["noDataValue"]
    x0, xc, xr, y0, yc, yr = info["geoTransform"]
    wide = xc * yr - xr * yc
    found = 0
    for cell in cells:
        e, n = float(cell["easting"]) - x0, float(cell["northing"]) - y0
        column, row = (e * yr - n * xr) / wide, (n * xc - e * yc) / wide
        check(abs(column % 1 - 0.5) < 2e-3 and abs(row % 1 - 0.5) < 2e-3, f"{cell['cell']} is off centre")
        value = rows[int(row)][int(column)]
        if not cell["cut_at_centre"]:
            check(value == empty, f"{cell['cell']} holds {value}, is not dug")
            continue
        found += 1
        check(abs(value - float(cell["cut_at_centre"])) < 6e-4, f"{cell['cell']}: {value}")
    held = sum(v != empty for row in rows for v in row)
    check(found == held > 100, f"{found} cells, {held} values")


def north_up(tif, cells, size):
    info, rows = read(tif)
    x0, xc, xr, y0, yc, yr = info["geoTransform"]
    check((xc, xr, yc, yr) == (size, 0, 0, -size), f"geotransform {info['geoTransform']}")
    check(x0 % size == 0 and y0 % size == 0, f"corner {x0} {y0}")
    empty = info["bands"][0]["noDataValue"]
    near = 0
    for cell in cells:
        if not cell["cut_at_centre"]:
            continue
        value = rows[int((y0 - float(cell["northing"])) / size)][int((float(cell["easting"]) - x0) / size)]
        if value != empty:
            near += 1
            # batters of 1:1 and flatter, ground flatter than 1 in 4
            check(abs(value - float(cell["cut_at_centre"])) < size * 0.7072 * 1.25 + 1e-3,
                  f"{cell['cell']}: {value} beside {cell['cut_at_centre']}")
    check(near > 100, f"{near} cells compared")


def main():
    program, source = sys.argv[1:3]
    for other in ("gdalinfo", "gdal_translate"):
        if not shutil.which(other):
            print(f"SKIPPED: {other} is not installed")
            return 0
    with tempfile.TemporaryDirectory() as made:
        folder = pathlib.Path(made) / "job"
        shutil.copytree(pathlib.Path(source) / "demo" / "alderbrook", folder)
        tif = dug(program, folder, "tank")
        cells = list(csv.DictReader((folder / "out" / "cells.csv").open(encoding="utf-8")))
        size = json.loads((folder / "out" / "dig.json").read_text(encoding="utf-8"))["cells"]["size_m"]
        along_the_tank(tif, cells)
        north_up(dug(program, folder, "north"), cells, size)
    for fault in FAULTS:
        print(fault)
    return 1 if FAULTS else 0


if __name__ == "__main__":
    sys.exit(main())
