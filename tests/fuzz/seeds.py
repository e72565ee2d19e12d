#!/usr/bin/env python3
"""First inputs for the fuzzers. Usage: seeds.py SOURCE OUT

For each fuzzer a folder OUT/NAME with small files of its kind, each content once: those of the tests in
this project, the demo, ground written in every format, and, where it stands beside the project,
../shared/data. A long table gives its first lines.
"""
import hashlib
import pathlib
import shutil
import sqlite3
import subprocess
import sys

MOST = 8192  # bytes: longer files make a fuzzer slow
KINDS = {"csv": (".csv",), "books": (".csv",), "landxml": (".xml",), "las": (".las", ".laz"),
         "dxf": (".dxf",), "geojson": (".geojson", ".json"), "geopackage": (".gpkg",),
         "geotiff": (".tif",), "geoid": (".tif", ".gtx"), "ascii_grid": (".asc",), "job": (".toml",)}
IN_LINES = (".csv", ".asc", ".toml")  # the beginning of such a file is one of its kind
GRID = ("ncols 3\nnrows 2\nxllcorner 715830.5\nyllcorner 734697\ncellsize 2\nNODATA_value -9999\n"
        "62.5 63 -9999\n64.25 65 66\n")
LINES = ('{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:2157"}},"features":['
         '{"type":"Feature","properties":{"string":"kerb"},"geometry":{"type":"LineString","coordinates":'
         '[[715830,734697,62],[715840,734697,63],[715840,734707,64]]}}]}')
ROOM = ("gpkg_tile_matrix", "gpkg_tile_matrix_set", "gpkg_metadata_reference", "gpkg_metadata")


def small_package(made):
    """A GeoPackage of 80 kB without what no reader here looks at, in pages of 512 bytes."""
    with sqlite3.connect(made) as file:
        names = file.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall()
        for (name,) in names:
            file.execute(f'DROP TRIGGER "{name}"')
        for name in ROOM:
            file.execute(f"DROP TABLE IF EXISTS {name}")
        file.execute("DELETE FROM gpkg_spatial_ref_sys WHERE srs_id NOT IN (2157)")
    file = sqlite3.connect(made)
    file.execute("PRAGMA page_size = 512")
    file.execute("VACUUM")
    file.close()


def packages(folder):
    """Points, lines, and both in one."""
    (folder / "lines.geojson").write_text(LINES, encoding="utf-8")
    plain = ["-dim", "XYZ", "-lco", "SPATIAL_INDEX=NO", "-dsco", "ADD_GPKG_OGR_CONTENTS=NO"]
    for name, sources in {"points": ["ground"], "lines": ["lines"], "both": ["ground", "lines"]}.items():
        made = folder / f"{name}.gpkg"
        for source in sources:
            subprocess.run(["ogr2ogr", "-f", "GPKG", "-update", "-append", made, folder / f"{source}.geojson",
                            "-nln", source, *plain], check=True, stderr=subprocess.DEVNULL)
        small_package(made)


def small_ground(source, out):
    """Six of the demo's points in every format, and a grid as GeoTIFF and GTX."""
    sys.path.insert(0, str(source / "tests" / "round_trips"))
    import survey_files
    points = survey_files.ground_points(source / "demo" / "alderbrook" / "ground.csv")[:6]
    folder = out / "made"
    folder.mkdir(parents=True)
    for ending in survey_files.WRITERS:
        for unit in ("m",) if ending in (".geojson", ".gpkg") else ("m", "us-ft"):
            if ending != ".gpkg":
                name = "ground" if unit == "m" else "feet"
                survey_files.write(points, folder / (name + ending), "2" if ending == ".las" else "GL", unit)
    packages(folder)
    (folder / "grid.asc").write_text(GRID, encoding="utf-8")
    for name, options in (("plain", []), ("tiled", ["-co", "TILED=YES", "-co", "COMPRESS=DEFLATE"])):
        subprocess.run(["gdal_translate", "-q", "-a_srs", "EPSG:2157", *options, folder / "grid.asc",
                        folder / f"{name}.tif"], check=True)
    degrees = ["-a_srs", "EPSG:4937", "-a_ullr", "-8", "54", "-7.5", "53.5", "-ot", "Float32"]
    for ending in ("tif", "gtx"):
        subprocess.run(["gdal_translate", "-q", *degrees, folder / "grid.asc", folder / f"geoid.{ending}"],
                       check=True)
    return folder


def contents(path):
    """The bytes of a file that is small enough, or of its first lines."""
    data = path.read_bytes()
    if len(data) > MOST and path.suffix in IN_LINES:
        data = data[:data.rfind(b"\n", 0, MOST) + 1]
    return data if 0 < len(data) <= (2 * MOST if path.suffix in (".gpkg", ".las", ".dxf") else MOST) else None


def main():
    source, out = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    shutil.rmtree(out, ignore_errors=True)
    made = small_ground(source, out)
    roots = [made, source / "demo", source / "tests", source.parent / "shared" / "data"]
    files = [p for root in roots if root.exists() for p in sorted(root.rglob("*")) if p.is_file()]
    for kind, endings in KINDS.items():
        folder = out / kind
        folder.mkdir()
        for path in (p for p in files if p.suffix in endings):
            data = contents(path)
            if data is not None:
                (folder / (hashlib.sha256(data).hexdigest()[:16] + path.suffix)).write_bytes(data)
        if not any(folder.iterdir()):
            raise SystemExit(f"no seeds for {kind}")
    shutil.rmtree(made)
    print(", ".join(f"{k} {len(list((out / k).iterdir()))}" for k in KINDS))


if __name__ == "__main__":
    main()
