#!/usr/bin/env python3
"""Every file of ../shared/data is read with what is known of it, or refused with the right line.
Usage: real_files.py READ_FILE SOURCE

The counts and extents are those of the list of known truths that stands beside the files (SOURCES.md), in
the files' own units. A file that is not in the table here is a complaint, except those of malformed/, which
have a table of their own (tests/malformed). Areas and volumes of the surfaces are held in
RealLandXml.SurfacesHaveTheirKnownSizes and Surfaces.* of tests/published, worked examples (obs/) in
tests/published, nodes of geoids in tests/published/app_geoid_test.cpp.
"""
import pathlib
import re
import subprocess
import sys

FOOT = 0.3048
SURVEY_FOOT = 1200 / 3937
# file, role, what the job says of it, and the known truth: "N RESULT" and, in the file's unit, ranges
TAKEN = [
    ("landxml/rockbed_survey.xml", "surface", "", "faces 3244", 1, {"height": (13.809, 21.948)}),
    ("landxml/rockbed_survey.xml", "strings", "", "read 1107", 1, {}),
    ("landxml/rockbed_survey.xml", "strings", "", "strings 67", 1, {}),
    ("landxml/rockbed_survey.xml", "points", "", "points 988", 1, {}),
    ("landxml/design_lowest_M3.xml", "surface", "", "faces 8881", 1, {"height": (15.300, 21.774)}),
    ("landxml/design_lowest_M3.xml", "strings", "", "read 5008", 1, {}),
    ("landxml/design_lowest_M3.xml", "strings", "", "strings 39", 1, {}),
    ("landxml/design_highest_Y10.xml", "surface", "", "faces 547", 1, {}),
    ("landxml/design_lowest_Y10.xml", "surface", "", "faces 589", 1, {}),
    ("landxml/cgpoints_columns.xml", "points", "", "points 37", 1, {}),
    ("landxml/minimal_valid_handmade.xml", "surface", "", "faces 1", 1, {}),
    ("landxml/minimal_valid_handmade.xml", "points", "", "points 2", 1, {}),
    ("las/simple.las", "points", "units=ft", "points 1065", FOOT,
     {"east": (635619.85, 638982.55), "north": (848899.70, 853535.43), "height": (406.59, 586.38)}),
    ("las/simple.las", "points", "codes=1", "points 789", 1, {}),
    ("las/simple.las", "points", "codes=2", "points 276", 1, {}),
    ("las/extrabytes.las", "points", "units=us-ft", "points 1065", SURVEY_FOOT,
     {"east": (635619.85, 638982.55), "north": (848899.70, 853535.43), "height": (406.59, 586.38)}),
    ("las/autzen-thin.las", "points", "", "points 10653", 1, {}),
    ("las/autzen-thin.las", "points", "codes=2", "points 2719", 1, {}),
    ("las/test1_4.las", "points", "", "points 1000", 1, {}),
    ("las/1.2-empty-geotiff-vlrs.las", "points", "", "points 43", 1, {}),
    ("las/test_utm17.las", "points", "", "points 10", 1, {}),
    ("las/permutations/1.0_0.las", "points", "", "points 1", 1, {"east": (470692.44, 470692.44)}),
    ("las/permutations/1.0_1.las", "points", "", "points 1", 1, {"north": (4602888.9, 4602888.9)}),
    ("las/permutations/1.1_0.las", "points", "", "points 1", 1, {"height": (16, 16)}),
    ("las/permutations/1.1_1.las", "points", "", "points 1", 1, {"height": (16, 16)}),
    ("dxf/design_lowest_Y10_3dface.dxf", "surface", "", "faces 589", 1, {}),
    ("dxf/design_lowest_Y10_3dface.dxf", "strings", "", "strings 17", 1, {}),
    ("dxf/hand_r12_entity_mix.dxf", "points", "", "points 1", FOOT, {"height": (10.5, 10.5)}),
    ("dxf/hand_r12_entity_mix.dxf", "strings", "", "strings 2", FOOT, {}),
    ("dxf/contours_pre_runout_DEM.dxf", "strings", "units=m", "strings 51", 1, {}),
    ("dxf/polylines_2.dxf", "strings", "", "strings 57", 1, {}),
    ("dem/pre_runout_DEM.asc", "points", "", "points 9638", 1, {"height": (189.0281, 582.3846)}),
    ("dem/pre_runout_DEM.asc", "points", "", f"read {80 * 122}", 1, {}),
]
REFUSED = [
    ("las/simple.laz", "points", "compressed points (LAZ); a LAS file, which is not compressed; convert it"),
    ("dxf/hand_r12_entity_mix.dxf", "surface", "a face of four corners, the last 914.4 mm out of plane; triangles"),
    ("dxf/contours_pre_runout_DEM.dxf", "strings", "$INSUNITS 1, which no survey is in; 6 (metre), 2 (foot)"),
    ("geoid/test_vgrid_pixelispoint.tif", "points", 'coordinates in degrees, "EPSG:4326"; metres on the job'),
    ("geoid/egm96_15_downsampled.gtx", "points", "as points; a file whose name ends in .csv"),
    ("landxml/LandXML-1.2.xsd", "surface", "as a surface; a file whose name ends in .xml, .dxf"),
    ("csv/rockbed_points.csv", "points", "no column point; a points file with point, easting, northing, height"),
    ("csv/rockbed_breaklines.csv", "strings", "no column height; a strings file with string, easting, northing"),
    ("obs/textbook_loop_traverse.csv", "points", "no column point; a points file"),
    ("obs/textbook_trig_levelling.csv", "points", "no column easting; a points file"),
]
FAULTS = []


def said_of(reader, data, file, role, words):
    done = subprocess.run([reader, role, data / file, *words.split()], capture_output=True, text=True, check=False,
                          timeout=60)
    if done.returncode not in (0, 2) or done.stderr:
        FAULTS.append(f"{file} as {role}: exit {done.returncode}, {done.stderr!r}")
    return done.returncode, done.stdout


def taken(reader, data):
    for file, role, words, wanted, unit, ranges in TAKEN:
        status, said = said_of(reader, data, file, role, words)
        if status != 0 or f" {wanted} " not in f" {said} ":
            FAULTS.append(f"{file} as {role}: {wanted} wanted, said {said!r}")
        for axis, (low, high) in ranges.items():
            have = re.search(axis + r" ([-\d.e]+?)\.\.([-\d.e]+)", said)
            if have is None or abs(float(have[1]) / unit - low) > 1e-6 or abs(float(have[2]) / unit - high) > 1e-6:
                FAULTS.append(f"{file} as {role}: {axis} {low}..{high} wanted, said {said!r}")


def refused(reader, data):
    for file, role, line in REFUSED:
        status, said = said_of(reader, data, file, role, "")
        if status != 2 or line not in said:
            FAULTS.append(f"{file} as {role}: {line!r} wanted, said {said!r}")


def main():
    reader, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).resolve()
    data = source.parent / "shared" / "data"
    if not data.exists():
        print(f"skipped: no {data}")
        return
    there = {str(p.relative_to(data)) for p in data.rglob("*") if p.is_file() and p.name != "SOURCES.md"}
    there = {name for name in there if not name.startswith("malformed/")}
    FAULTS.extend(f"{name} is in no table" for name in sorted(there - {row[0] for row in TAKEN + REFUSED}))
    taken(reader, data)
    refused(reader, data)
    print("\n".join(FAULTS) if FAULTS else f"{len(there)} files, {len(TAKEN)} truths, {len(REFUSED)} refusals")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
