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
import struct
import subprocess
import sys

MOST = 8192  # bytes: longer files make a fuzzer slow
KINDS = {"csv": (".csv",), "books": (".csv",), "landxml": (".xml",), "las": (".las", ".laz"),
         "dxf": (".dxf",), "geojson": (".geojson", ".json"), "geopackage": (".gpkg",),
         "geotiff": (".tif",), "geoid": (".tif", ".gtx"), "ascii_grid": (".asc",), "job": (".toml",),
         "number": (".number",)}
IN_LINES = (".csv", ".asc", ".toml")  # the beginning of such a file is one of its kind
GRID = ("ncols 3\nnrows 2\nxllcorner 715830.5\nyllcorner 734697\ncellsize 2\nNODATA_value -9999\n"
        "62.5 63 -9999\n64.25 65 66\n")
LINES = ('{"type":"FeatureCollection","crs":{"type":"name","properties":{"name":"EPSG:2157"}},"features":['
         '{"type":"Feature","properties":{"string":"kerb"},"geometry":{"type":"LineString","coordinates":'
         '[[715830,734697,62],[715840,734697,63],[715840,734707,64]]}}]}')
NUMBERS = ("715830.25\n", " +62.350\r\n-0.0\n", "1e-5\n.5\n5.\n", "-734697.6001\n0.00012\n1234567890.12345",
           "9007199254740993\n123456789012345.6\n", "1e400\nnan\n1,5\n0x10\n++1\n")
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


def drawing():
    """Every kind of entity that is read, in a code page, with texts in every spelling."""
    pairs = ("0 SECTION 2 HEADER 9 $DWGCODEPAGE 3 ANSI_1252 9 $INSUNITS 70 6 0 ENDSEC 0 SECTION 2 BLOCKS 0 BLOCK "
             "2 B 0 POINT 8 P 10 1 20 1 30 1 0 ENDBLK 0 ENDSEC 0 SECTION 2 ENTITIES 0 POINT 8 GL 10 1 20 2 30 3 "
             "0 TEXT 8 N 10 1 20 2 1 a\\U+00E9%%d%%065\xe9 0 POINT 8 GL 67 1 10 2 20 2 30 2 0 LINE 8 K 10 0 20 0 "
             "30 1 11 5 21 0 31 2 0 POLYLINE 8 T 70 9 0 VERTEX 10 0 20 0 30 1 70 32 0 VERTEX 10 5 20 0 30 2 70 32 "
             "0 SEQEND 0 LWPOLYLINE 8 C 90 2 70 1 38 12.5 10 1 20 2 42 0.5 10 3 20 4 0 3DFACE 8 F 10 0 20 0 30 0 "
             "11 1 21 0 31 0 12 1 22 1 32 0 13 0 23 1 33 0 0 POLYLINE 8 M 70 64 71 3 72 1 0 VERTEX 10 0 20 0 30 0 "
             "70 192 0 VERTEX 10 1 20 0 30 0 70 192 0 VERTEX 10 1 20 1 30 0 70 192 0 VERTEX 10 0 20 0 30 0 70 128 "
             "71 1 72 2 73 3 0 SEQEND 0 INSERT 8 P 66 1 2 B 10 9 20 9 0 ATTRIB 8 P 1 x 0 SEQEND 0 MTEXT 8 P 1 m "
             "0 ENDSEC 0 EOF")
    return (pairs.replace(" ", "\n") + "\n").encode("latin-1")


def scan(wkt, late):
    """LAS 1.4, one point of format 6, its system in WKT before the points or behind them."""
    text = wkt.encode()
    before = b"" if late else struct.pack("<H16sHH32s", 0, b"LASF_Projection", 2112, len(text), b"") + text
    behind = struct.pack("<H16sHQ32s", 0, b"LASF_Projection", 2112, len(text), b"") + text if late else b""
    point = struct.pack("<3iHBBBBhHd", 250, 600, 62000, 0, 0x11, 0, 2, 0, 0, 1, 0.0)
    head = bytearray(375)
    head[0:4], head[6], head[24:26] = b"LASF", 16, bytes([1, 4])
    struct.pack_into("<HIIBH", head, 94, 375, 375 + len(before), len(before) and 1, 6, len(point))
    struct.pack_into("<6d", head, 131, 0.001, 0.001, 0.001, 715830.0, 734697.0, 0.0)
    struct.pack_into("<6d", head, 179, 1e6, 0, 1e6, 0, 1e3, 0)
    struct.pack_into("<QIQ", head, 235, 375 + len(before) + len(point) if late else 0, 1 if late else 0, 1)
    return bytes(head) + before + point + behind


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
    (folder / "kinds.dxf").write_bytes(drawing())
    wkt = subprocess.run(["gdalsrsinfo", "-o", "wkt1", "--single-line", "EPSG:2157"], check=True,
                         capture_output=True, text=True).stdout.strip()
    for late in (False, True):
        (folder / f"late{late}.las").write_bytes(scan(wkt, late))
    for number, text in enumerate(NUMBERS):
        (folder / f"{number}.number").write_text(text, encoding="utf-8")
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
