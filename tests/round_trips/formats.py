#!/usr/bin/env python3
"""The same ground through every format gives the same cut. Usage: formats.py PROGRAM SOURCE

The demo's ground is written as CSV, LandXML, DXF, LAS, GeoJSON and GeoPackage (survey_files.py: none
of the program's own code) and the demo's dig is computed from each. Formats that hold a double give the
cut to the last bit; LAS at a scale of 1 mm gives it to 1e-6 m3, as the demo's points are whole
millimetres. Feet of both kinds agree with metres to 1e-6 m3; LAS in feet gives the cut of what it holds to
the last bit, and that is within half its scale over the pit of the one in metres.
A grid of heights is the same ground as ASCII grid, GeoTIFF (gdal_translate) and CSV. Files whose unit
contradicts their coordinate system or the job are refused; a file in another projection of the same
datum, or in feet of the same projection, is taken over exactly. Refusals end with status 2 and leave nothing.
"""
import json
import pathlib
import shutil
import struct
import subprocess
import sys
import tempfile

import survey_files

POINTS = 'points     = ["ground.csv"]'
FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


class Job:
    """A copy of the demo, its ground named anew for each run."""

    def __init__(self, program, source, folder):
        self.program, self.folder = program, folder
        shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
        self.text = (folder / "job.toml").read_text(encoding="utf-8")
        assert POINTS in self.text and 'codes      = ["GL"]' in self.text

    def run(self, stage, points, codes):
        """Exit status, result object (None where it is refused) and what was said."""
        text = self.text.replace(POINTS, f"points = [{points}]").replace(
            'codes      = ["GL"]', f"codes = {json.dumps(codes)}" if codes else "")
        (self.folder / "job.toml").write_text(text, encoding="utf-8")
        shutil.rmtree(self.folder / "out", ignore_errors=True)
        done = subprocess.run([self.program, stage, ".", "--quiet", "--json"], cwd=self.folder,
                              capture_output=True, text=True, check=False, timeout=120)
        if done.returncode not in (0, 1, 2):
            raise SystemExit(f"{points}: exit {done.returncode}: {done.stderr}")
        result = json.loads(done.stdout) if done.returncode < 2 else None
        return done.returncode, result, done.stderr

    def cut(self, points, codes):
        status, result, said = self.run("dig", points, codes)
        if status == 2:
            raise SystemExit(f"{points}: {said}")
        return result

    def refused(self, points, line):
        status, _, said = self.run("ground", points, None)
        check(status == 2 and line in said, f"{points}: status {status}, said {said!r}")
        check(not (self.folder / "out").exists(), f"{points}: something was written")


def same_ground(job, points):
    wanted = job.cut('"ground.csv"', ["GL"])
    ground = job.run("ground", '"ground.csv"', ["GL"])[1]
    names = {".csv": "GL", ".xml": "GL", ".dxf": "GL", ".geojson": "GL", ".gpkg": "GL", ".las": "2"}
    for ending, code in names.items():
        survey_files.write(points, job.folder / ("same" + ending), code)
        result = job.cut(f'"same{ending}"', [code])
        off = abs(result["cut_bank_m3"] - wanted["cut_bank_m3"])
        check(off <= (1e-6 if ending == ".las" else 0), f"{ending}: the cut is {off} m3 off")
        built = job.run("ground", f'"same{ending}"', [code])[1]
        for key in ("points", "triangles"):
            check(built[key] == ground[key], f"{ending}: {key} {built[key]} for {ground[key]}")
        record = next(r for r in built["inputs"] if r["file"] == "same" + ending)
        check(record["read"] == record["used"] == len(points), f"{ending}: {record}")
    return wanted


def feet(job, points, wanted):
    for unit in ("ft", "us-ft"):
        for ending in (".csv", ".xml", ".dxf"):
            survey_files.write(points, job.folder / ("feet" + ending), "GL", unit)
            spec = f'{{ file = "feet{ending}", units = "{unit}" }}'
            off = abs(job.cut(spec, ["GL"])["cut_bank_m3"] - wanted["cut_bank_m3"])
            check(off < 1e-6, f"{ending} in {unit}: {off} m3 off")
        for scale in (1e-3, 1e-6):
            las_in_feet(job, survey_files.in_unit(points, unit), unit, scale, wanted)


def las_in_feet(job, points, unit, scale, wanted):
    (job.folder / "feet.las").write_bytes(survey_files.las(points, "2", unit, scale))
    held = survey_files.las_held(points, scale)
    (job.folder / "held.csv").write_bytes(survey_files.table(held, "GL", unit))
    cut = job.cut('"feet.las"', ["2"])["cut_bank_m3"]
    same = job.cut(f'{{ file = "held.csv", units = "{unit}" }}', ["GL"])["cut_bank_m3"]
    check(cut == same, f"LAS in {unit} of {scale}: {cut} m3, what it holds gives {same} m3")
    off = abs(cut - wanted["cut_bank_m3"])
    check(off < wanted["crest_area_m2"] * scale * survey_files.METRES[unit] / 2,
          f"LAS in {unit} of {scale}: {off} m3 off")


def contradictions(job, points):
    survey_files.write(points, job.folder / "c.las", "2")
    bytes_ = bytearray((job.folder / "c.las").read_bytes())
    at = bytes_.index(struct.pack("<4H", 3076, 0, 1, 9001))
    bytes_[at:at + 8] = struct.pack("<4H", 3076, 0, 1, 9002)
    (job.folder / "c.las").write_bytes(bytes_)
    job.refused('"c.las"', "c.las:1:1: lengths in ft; m of EPSG:2157;")
    survey_files.write(points, job.folder / "c.xml", "GL")
    text = (job.folder / "c.xml").read_text(encoding="utf-8")
    (job.folder / "c.xml").write_text(text.replace("<Metric linearUnit=\"meter\"", "<Imperial linearUnit=\"foot\""),
                                      encoding="utf-8")
    job.refused('"c.xml"', "lengths in ft; m of 2157;")
    survey_files.write(points, job.folder / "c.dxf", "GL")
    job.refused('{ file = "c.dxf", units = "us-ft" }', "c.dxf:12:1: lengths in m; us-ft as the job states;")
    survey_files.write(points, job.folder / "c.geojson", "GL")
    text = (job.folder / "c.geojson").read_text(encoding="utf-8")
    (job.folder / "c.geojson").write_text(text.replace('"crs"', '"was"'), encoding="utf-8")
    job.refused('"c.geojson"', "coordinates in degrees")
    (job.folder / "c.geojson").write_text(text.replace("EPSG::2157", "EPSG::4326"), encoding="utf-8")
    job.refused('"c.geojson"', "coordinates in EPSG:4326, from which the best way to EPSG:2157")


def other_systems(job, points, wanted):
    """Brought to other systems by ogr2ogr: one of the same datum is taken over, another refused."""
    survey_files.write(points, job.folder / "here.gpkg", "GL")
    for name, epsg in (("same", 2158), ("other", 32629)):
        subprocess.run(["ogr2ogr", "-f", "GPKG", f"{name}.gpkg", "here.gpkg", "-t_srs", f"EPSG:{epsg}"],
                       check=True, cwd=job.folder)
    result = job.cut('"same.gpkg"', ["GL"])
    off = abs(result["cut_bank_m3"] - wanted["cut_bank_m3"])
    check(off < 1e-5, f"EPSG:2158: the cut is {off} m3 off")
    check(any("EPSG:2158 are taken over to EPSG:2157" in text for text in result["assumed"]),
          f"EPSG:2158: not told: {result['assumed']}")
    job.refused('"other.gpkg"', "m only; coordinates in EPSG:2157, or a way that loses nothing;")
    feet_of_the_same_projection(job, points)


def feet_of_the_same_projection(job, points):
    """Arizona Central in metres is the job's, and of the file the same in feet (EPSG:2762, 2868)."""
    metric = job.text
    job.text = metric.replace("EPSG:2157", "EPSG:2762")
    feet = survey_files.in_unit(points, "ft")
    (job.folder / "zone.las").write_bytes(survey_files.las(feet, "2", "ft", 1e-3, 2868))
    (job.folder / "held.csv").write_bytes(survey_files.table(survey_files.las_held(feet), "GL", "ft"))
    result = job.cut('"zone.las"', ["2"])
    off = abs(result["cut_bank_m3"] - job.cut('{ file = "held.csv", units = "ft" }', ["GL"])["cut_bank_m3"])
    check(off < 1e-6, f"EPSG:2868: the cut is {off} m3 off")
    check(any("EPSG:2868 are taken over to EPSG:2762" in text for text in result["assumed"]),
          f"EPSG:2868: not told: {result['assumed']}")
    job.refused('{ file = "zone.las", units = "us-ft" }', "lengths in ft of EPSG:2868; us-ft as the job states;")
    job.text = metric


def rasters(job):
    """Heights in eighths of a metre, so that 32 bits hold them."""
    columns, rows, cell, west, south = 45, 43, 2.0, 715790.0, 734660.0
    height = [[64 + (i * 3 + j * 5 + (i * j) % 7) % 16 / 8 for i in range(columns)]
              for j in range(rows)]
    grid = [f"ncols {columns}", f"nrows {rows}", f"xllcorner {west}", f"yllcorner {south}",
            f"cellsize {cell}", "NODATA_value -9999"]
    height[1][1] = -9999
    grid += [" ".join(repr(v) for v in row) for row in height]
    (job.folder / "g.asc").write_text("\n".join(grid) + "\n", encoding="utf-8")
    lines = ["point,easting,northing,height"]
    lines += [f"{j}-{i},{west + cell * (i + 0.5)},{south + cell * (rows - j - 0.5)},{height[j][i]}"
              for j in range(rows) for i in range(columns) if height[j][i] > -9999]
    (job.folder / "g.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")
    subprocess.run(["gdal_translate", "-q", "-a_srs", "EPSG:2157", "g.asc", "g.tif"], check=True,
                   cwd=job.folder)
    wanted = job.cut('"g.csv"', None)["cut_bank_m3"]
    for name in ("g.asc", "g.tif"):
        check(job.cut(f'"{name}"', None)["cut_bank_m3"] == wanted, f"{name}: another cut than g.csv")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).resolve()
    missing = [p for p in ("ogr2ogr", "gdal_translate") if shutil.which(p) is None]
    if missing:
        print(f"skipped: no {missing[0]} to write files with")
        return
    with tempfile.TemporaryDirectory() as name:
        job = Job(program, source, pathlib.Path(name, "job"))
        points = survey_files.ground_points(source / "demo" / "alderbrook" / "ground.csv")
        wanted = same_ground(job, points)
        feet(job, points, wanted)
        contradictions(job, points)
        other_systems(job, points, wanted)
        rasters(job)
    print("\n".join(FAULTS) if FAULTS else f"one cut, {wanted['cut_bank_m3']} m3, through every format")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
