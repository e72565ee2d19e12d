#!/usr/bin/env python3
"""What the program writes is valid by its standard. Usage: standards.py PROGRAM SOURCE

The demo is run, and its GeoPackages and its GeoJSON are held against the requirements of their standards by
code that shares nothing with the program: Python's sqlite3, json and struct. LandXML is held against its
schema in LandXmlWrite, DigFiles and PegsDrawing; drawings and rasters are read by other programs in the
tests of their writers; pages and sheets in tests/pages.
Source: OGC GeoPackage 1.3 (12-128r18), requirements by number; RFC 7946, by section; from memory.
"""
import json
import pathlib
import shutil
import sqlite3
import struct
import subprocess
import sys
import tempfile

KINDS = {"POINT": 1, "LINESTRING": 2, "POLYGON": 3}  # with heights 1000 more
FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


def positions(blob, at=0):
    """The positions of a little-endian WKB geometry, and where it ends."""
    order, kind = struct.unpack_from("<BI", blob, at)
    check(order == 1 and kind in (1, 1001, 1002, 1003), f"WKB of kind {kind}, byte order {order}")
    each = "<3d" if kind > 1000 else "<2d"
    size, at = struct.calcsize(each), at + 5

    def row(at):
        count = struct.unpack_from("<I", blob, at)[0]
        return [struct.unpack_from(each, blob, at + 4 + size * i) for i in range(count)], at + 4 + size * count

    if kind % 1000 == 1:
        return [struct.unpack_from(each, blob, at)], at + size
    if kind % 1000 == 2:
        return row(at)
    count, found, at = struct.unpack_from("<I", blob, at)[0], [], at + 4
    for _ in range(count):
        ring, at = row(at)
        check(ring[0] == ring[-1] and len(ring) >= 4, "a ring that is not closed")
        found += ring
    return found, at


def rows_of(file, name, table, column, kind, z, system, box):
    key = [row for row in file.execute(f'PRAGMA table_info("{table}")') if row[5] == 1]
    check(len(key) == 1 and key[0][2] == "INTEGER", f"{name} {table}: no integer primary key (29)")
    count = 0
    for (blob,) in file.execute(f'SELECT "{column}" FROM "{table}"'):
        magic, version, flags, srs = struct.unpack_from("<2sBBi", blob)
        check((magic, version, flags & 1) == (b"GP", 0, 1), f"{name} {table}: header of a geometry (19)")
        check(srs == system, f"{name} {table}: geometry in {srs}, layer in {system} (33)")
        at = 8 + (0, 32, 48, 48, 64)[(flags >> 1) & 7]
        check(struct.unpack_from("<I", blob, at + 1)[0] == KINDS[kind] + 1000 * z, f"{name} {table}: not a {kind} (32)")
        found, end = positions(blob, at)
        check(end == len(blob), f"{name} {table}: {len(blob) - end} bytes behind a geometry")
        for east, north, *_ in found:
            inside = box[0] - 1e-6 <= east <= box[2] + 1e-6 and box[1] - 1e-6 <= north <= box[3] + 1e-6
            check(inside, f"{name} {table}: {east} {north} outside {box}")
        count += 1
    check(count > 0, f"{name} {table}: no rows")


def geopackage(path):
    check(path.read_bytes()[68:72] == b"GPKG", f"{path.name}: application id (2)")
    layers = 0
    with sqlite3.connect(f"file:{path}?mode=ro", uri=True) as file:
        check(file.execute("PRAGMA user_version").fetchone()[0] >= 10200, f"{path.name}: user version (2)")
        check(file.execute("PRAGMA integrity_check").fetchone()[0] == "ok", f"{path.name}: integrity (6)")
        check(file.execute("PRAGMA foreign_key_check").fetchall() == [], f"{path.name}: foreign keys (7)")
        systems = {row[0] for row in file.execute("SELECT srs_id FROM gpkg_spatial_ref_sys")}
        check({-1, 0, 4326} <= systems, f"{path.name}: systems {systems} (11)")
        layers = file.execute(
            "SELECT c.table_name, g.column_name, g.geometry_type_name, c.srs_id, g.srs_id, g.z, min_x, min_y, max_x, "
            "max_y FROM gpkg_contents c JOIN gpkg_geometry_columns g USING (table_name) "
            "WHERE c.data_type = 'features'").fetchall()
        for table, column, kind, system, same, z, *box in layers:
            check(kind in KINDS and z in (0, 1) and system == same and system in systems,
                  f"{path.name} {table}: {kind} z {z} in {system} and {same} (25, 26, 146)")
            if kind in KINDS:
                rows_of(file, path.name, table, column, kind, z, system, box)
    return len(layers)


def geojson(path):
    root = json.loads(path.read_text(encoding="utf-8"))
    check(root["type"] == "FeatureCollection" and "crs" not in root, f"{path.name}: the root (3.3, 4)")

    def places(value):
        if value and not isinstance(value[0], list):
            check(2 <= len(value) <= 3 and -180 <= value[0] <= 180 and -90 <= value[1] <= 90,
                  f"{path.name}: {value} is no longitude and latitude (3.1.1, 4)")
        else:
            for part in value:
                places(part)

    for feature in root["features"]:
        check(feature["type"] == "Feature" and {"geometry", "properties"} <= set(feature),
              f"{path.name}: a feature (3.2)")
        geometry = feature["geometry"]
        places(geometry["coordinates"])
        rings = geometry["coordinates"] if geometry["type"] == "Polygon" else []
        for ring in rings:
            check(len(ring) >= 4 and ring[0] == ring[-1], f"{path.name}: a ring that is not closed (3.1.6)")
    return len(root["features"])


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name) / "job"
        shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
        done = subprocess.run([program, "run", ".", "--quiet"], cwd=folder, capture_output=True, text=True,
                              check=False, timeout=300)
        if done.returncode not in (0, 1):
            raise SystemExit(f"exit {done.returncode}: {done.stderr}")
        packages, maps = sorted(folder.glob("out/*.gpkg")), sorted(folder.glob("out/*.geojson"))
        check(len(packages) == 2 and len(maps) == 1, f"{packages}, {maps}")
        layers = sum(geopackage(path) for path in packages)
        features = sum(geojson(path) for path in maps)
    print("\n".join(sorted(set(FAULTS))) if FAULTS else f"{layers} layers and {features} features by their standards")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
