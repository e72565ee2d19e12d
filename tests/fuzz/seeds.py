#!/usr/bin/env python3
"""First inputs for the fuzzers. Usage: seeds.py SOURCE OUT

For each fuzzer a folder OUT/NAME with small files of its kind: those of the tests in this project, the
demo, ground written in every format, and, where it stands beside the project, ../shared/data.
"""
import pathlib
import shutil
import subprocess
import sys

MOST = 60_000  # bytes: longer files make a fuzzer slow
KINDS = {"csv": (".csv",), "books": (".csv",), "landxml": (".xml",), "las": (".las", ".laz"),
         "dxf": (".dxf",), "geojson": (".geojson", ".json"), "geopackage": (".gpkg",),
         "geotiff": (".tif",), "geoid": (".tif", ".gtx"), "ascii_grid": (".asc",), "job": (".toml",)}
GRID = ("ncols 3\nnrows 2\nxllcorner 715830.5\nyllcorner 734697\ncellsize 2\nNODATA_value -9999\n"
        "62.5 63 -9999\n64.25 65 66\n")


def small_ground(source, out):
    """Six of the demo's points in every format, and a grid as GeoTIFF."""
    sys.path.insert(0, str(source / "tests" / "round_trips"))
    import survey_files
    points = survey_files.ground_points(source / "demo" / "alderbrook" / "ground.csv")[:6]
    folder = out / "made"
    folder.mkdir(parents=True)
    for ending in survey_files.WRITERS:
        survey_files.write(points, folder / ("ground" + ending), "2" if ending == ".las" else "GL")
    (folder / "grid.asc").write_text(GRID, encoding="utf-8")
    for name, options in (("plain", []), ("tiled", ["-co", "TILED=YES", "-co", "COMPRESS=DEFLATE"])):
        subprocess.run(["gdal_translate", "-q", "-a_srs", "EPSG:2157", *options, folder / "grid.asc",
                        folder / f"{name}.tif"], check=True)
    return folder


def main():
    source, out = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    shutil.rmtree(out, ignore_errors=True)
    made = small_ground(source, out)
    roots = [made, source / "demo", source / "tests", source.parent / "shared" / "data"]
    files = [p for root in roots if root.exists() for p in sorted(root.rglob("*"))
             if p.is_file() and p.stat().st_size <= MOST and "build" not in p.parts]
    for kind, endings in KINDS.items():
        folder = out / kind
        folder.mkdir()
        for number, path in enumerate(p for p in files if p.suffix in endings):
            shutil.copy(path, folder / f"{number}{path.suffix}")
        if not any(folder.iterdir()):
            raise SystemExit(f"no seeds for {kind}")
    shutil.rmtree(made)
    print(", ".join(f"{k} {len(list((out / k).iterdir()))}" for k in KINDS))


if __name__ == "__main__":
    main()
