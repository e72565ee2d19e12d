#!/usr/bin/env python3
"""Ground points written in open formats, none of them by the program's own code.
Usage: survey_files.py GROUND.csv OUT.ending [CODE [UNIT]]

Takes the points of a ground CSV whose code is CODE (GL if it is not given) and writes them as the
ending says: .las, .dxf, .geojson, .gpkg (by ogr2ogr), .xml (LandXML) or .csv, in metres, or in the
unit "ft" or "us-ft". EPSG:2157 is stated where the format can and the unit is the metre.
Layouts: ASPRS LAS 1.2; DXF R12 group codes; RFC 7946 with the "crs" member of the GeoJSON of 2008;
LandXML 1.2.
"""
import csv
import json
import pathlib
import struct
import subprocess
import sys
import tempfile

EPSG = 2157
METRES = {"m": 1.0, "ft": 0.3048, "us-ft": 1200 / 3937}
GEO_UNIT = {"m": 9001, "ft": 9002, "us-ft": 9003}
INSUNITS = {"m": 6, "ft": 2, "us-ft": 21}
LINEAR = {"m": "Metric", "ft": "Imperial", "us-ft": "Imperial"}
LINEAR_UNIT = {"m": "meter", "ft": "foot", "us-ft": "USSurveyFoot"}


def ground_points(path, code="GL"):
    """(name, easting, northing, height) of the rows with the code."""
    with open(path, encoding="utf-8", newline="") as file:
        lines = (line for line in file if not line.startswith("#"))
        return [(row["point"], float(row["easting"]), float(row["northing"]), float(row["height"]))
                for row in csv.DictReader(lines) if row["code"] == code]


def las_held(points, scale=0.001):
    """The points as LAS holds them: numbers of the scale, counted from a whole offset."""
    offset = [float(int(min(p[i] for p in points))) for i in (1, 2, 3)]
    return [(p[0], *(round((p[i + 1] - offset[i]) / scale) * scale + offset[i] for i in range(3)))
            for p in points]


def las(points, code, unit, scale=0.001, epsg=None):
    system = epsg or (EPSG if unit == "m" else None)
    keys = [(1024, 1), (3076, GEO_UNIT[unit])] + ([(3072, system)] if system else [])
    keys.sort()
    directory = struct.pack("<4H", 1, 1, 0, len(keys))
    directory += b"".join(struct.pack("<4H", key, 0, 1, value) for key, value in keys)
    record = struct.pack("<H16sHH32s", 0, b"LASF_Projection", 34735, len(directory), b"") + directory
    low = [min(p[i] for p in points) for i in (1, 2, 3)]
    high = [max(p[i] for p in points) for i in (1, 2, 3)]
    offset = [float(int(v)) for v in low]
    head = bytearray(227)
    head[0:4], head[24:26] = b"LASF", bytes([1, 2])
    struct.pack_into("<HIIBHI", head, 94, 227, 227 + len(record), 1, 0, 20, len(points))
    struct.pack_into("<6d", head, 131, scale, scale, scale, *offset)
    struct.pack_into("<6d", head, 179, high[0], low[0], high[1], low[1], high[2], low[2])
    rows = [struct.pack("<3iHBBbBH", *(round((p[i + 1] - offset[i]) / scale) for i in range(3)),
                        0, 0x09, int(code), 0, 0, 0) for p in points]
    return bytes(head) + record + b"".join(rows)


def dxf(points, code, unit):
    lines = ["0", "SECTION", "2", "HEADER", "9", "$ACADVER", "1", "AC1009", "9", "$INSUNITS", "70",
             str(INSUNITS[unit]), "0", "ENDSEC", "0", "SECTION", "2", "ENTITIES"]
    for name, *at in points:
        place = [text for group, value in zip(("10", "20", "30"), at) for text in (group, repr(value))]
        lines += ["0", "POINT", "8", code] + place
        lines += ["0", "TEXT", "8", code] + place + ["40", "0.5", "1", name]
    return ("\n".join(lines + ["0", "ENDSEC", "0", "EOF"]) + "\n").encode()


def geojson(points, code, unit):
    assert unit == "m"
    features = [{"type": "Feature", "properties": {"point": name, "code": code},
                 "geometry": {"type": "Point", "coordinates": at}} for name, *at in points]
    named = {"type": "name", "properties": {"name": f"urn:ogc:def:crs:EPSG::{EPSG}"}}
    return json.dumps({"type": "FeatureCollection", "crs": named, "features": features}).encode()


def gpkg(points, code, unit):
    assert unit == "m"
    with tempfile.TemporaryDirectory() as folder:
        source, made = pathlib.Path(folder, "ground.geojson"), pathlib.Path(folder, "ground.gpkg")
        source.write_bytes(geojson(points, code, unit))
        subprocess.run(["ogr2ogr", "-f", "GPKG", made, source, "-nln", "ground", "-dim", "XYZ",
                        "--config", "OGR_CURRENT_DATE", "2026-03-20T00:00:00.000Z"], check=True)
        return made.read_bytes()


def landxml(points, code, unit):
    system = f'<CoordinateSystem epsgCode="{EPSG}"/>' if unit == "m" else ""
    rows = "".join(f'<CgPoint name="{name}" code="{code}">{n!r} {e!r} {h!r}</CgPoint>\n'
                   for name, e, n, h in points)
    return (f'<?xml version="1.0"?>\n<LandXML xmlns="http://www.landxml.org/schema/LandXML-1.2" '
            f'version="1.2" date="2026-03-20" time="00:00:00"><Units><{LINEAR[unit]} linearUnit='
            f'"{LINEAR_UNIT[unit]}"/></Units>{system}<CgPoints>\n{rows}</CgPoints></LandXML>\n'
            ).encode()


def table(points, code, _unit):
    rows = [f"{name},{e!r},{n!r},{h!r},{code}" for name, e, n, h in points]
    return ("point,easting,northing,height,code\n" + "\n".join(rows) + "\n").encode()


WRITERS = {".las": las, ".dxf": dxf, ".geojson": geojson, ".gpkg": gpkg, ".xml": landxml,
           ".csv": table}


def in_unit(points, unit):
    return [(p[0], *(v / METRES[unit] for v in p[1:])) for p in points]


def write(points, path, code, unit="m"):
    path = pathlib.Path(path)
    path.write_bytes(WRITERS[path.suffix](in_unit(points, unit), code, unit))


def main():
    arguments = sys.argv[1:] + [None] * 2
    out = pathlib.Path(arguments[1])
    code = arguments[2] or "GL"
    write(ground_points(arguments[0]), out, "2" if out.suffix == ".las" else code,
          arguments[3] or "m")


if __name__ == "__main__":
    main()
