#!/usr/bin/env python3
"""The examples of docs/field.md, worked again. Usage: field_example.py PROGRAM SOURCE [--print]

Of the worked sight each step is computed here from the field book alone, by the formulas that the page states; each number
that the page prints must be that of the step, to its last digit, and the program must come to the same
place. The radius of the earth and the scale of the map projection come from the ellipsoid and the grid's
own constants (GRS 80; EPSG:2157: meridian 8 degrees west, scale 0.99982 on it, false easting 600 000), by
the series of the transverse Mercator projection. Of the first example, what came out is compared.
"""
import csv
import json
import math
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

FIRST, JOB = "tests/commands/field/alderbrook", "tests/commands/field/one-sight"
SEMI_MAJOR, FLATTENING = 6378137.0, 1 / 298.257222101
FALSE_EASTING, FALSE_NORTHING, SCALE = 600000.0, 750000.0, 0.99982
ORIGIN_LATITUDE = math.radians(53.5)
REFRACTION = 0.13
SECONDS = 3600 * 180 / math.pi


def rows(path):
    lines = [l for l in path.read_text(encoding="utf-8").splitlines() if not l.startswith("#")]
    return list(csv.DictReader(lines))


def degrees(text):
    d, m, s = (float(part) for part in text.split())
    return d + m / 60 + s / 3600


def mean_direction(left, right):
    turned = (right - 180) % 360
    return (left + ((turned - left + 180) % 360 - 180) / 2) % 360


def refractivity(celsius, hectopascal, humidity, wavelength):
    group = 287.6155 + 4.88660 / wavelength ** 2 + 0.06800 / wavelength ** 4
    kelvin = 273.15 + celsius
    vapour = humidity / 100 * 6.1078 * 10 ** (7.5 * celsius / (237.3 + celsius))
    return 273.15 / 1013.25 * group * hectopascal / kelvin - 11.27 * vapour / kelvin


def meridian_arc(latitude):
    """By numbers: the curvature along the meridian, summed with Simpson's rule."""
    e2 = FLATTENING * (2 - FLATTENING)
    n = 2000
    step = (latitude - ORIGIN_LATITUDE) / n
    total = 0.0
    for i in range(n + 1):
        s = math.sin(ORIGIN_LATITUDE + i * step)
        weight = 1 if i in (0, n) else 4 if i % 2 else 2
        total += weight * SEMI_MAJOR * (1 - e2) / (1 - e2 * s * s) ** 1.5
    return total * step / 3


def earth_at(east, north):
    """Mean radius and point scale: the latitude of the foot point, moved by the series."""
    e2 = FLATTENING * (2 - FLATTENING)
    foot = ORIGIN_LATITUDE + (north - FALSE_NORTHING) / SCALE / 6.38e6
    for _ in range(20):
        foot -= (meridian_arc(foot) - (north - FALSE_NORTHING) / SCALE) / 6.38e6
    s = math.sin(foot)
    across = SEMI_MAJOR / math.sqrt(1 - e2 * s * s)
    along = SEMI_MAJOR * (1 - e2) / (1 - e2 * s * s) ** 1.5
    x = (east - FALSE_EASTING) / SCALE
    latitude = foot - math.tan(foot) * x * x / (2 * along * across)
    s2 = math.sin(latitude) ** 2
    radius = SEMI_MAJOR * math.sqrt(1 - e2) / (1 - e2 * s2)
    second = x * x / (2 * along * across)
    return radius, SCALE * (1 + second + second * second / 6)


def work(job):
    """The steps, in order: label, value, unit."""
    control = {r["point"]: (float(r["easting"]), float(r["northing"]), float(r["height"]))
               for r in rows(job / "control.csv")}
    sights = {}
    book = rows(job / "setups.csv")
    for row in book:
        sights.setdefault(row["target"], {})[row["face"]] = row
    station, instrument = control[book[0]["station"]], float(book[0]["instrument_height"])
    back, sight = sights["CP2"], sights["P1"]
    direction = {name: mean_direction(degrees(s["L"]["horizontal"]), degrees(s["R"]["horizontal"]))
                 for name, s in (("CP2", back), ("P1", sight))}
    zenith = (degrees(sight["L"]["zenith"]) + 360 - degrees(sight["R"]["zenith"])) / 2
    bearing_back = math.degrees(math.atan2(control["CP2"][0] - station[0],
                                           control["CP2"][1] - station[1])) % 360
    orientation = (bearing_back - direction["CP2"]) % 360
    bearing = (orientation + direction["P1"]) % 360
    one = sight["L"]
    shown = sum(float(sight[f]["slope_distance"]) for f in "LR") / 2
    with_prism = shown + float(one["prism_constant_mm"]) / 1000
    wavelength = float(one["wavelength_um"])
    air = refractivity(float(one["temperature_c"]), float(one["pressure_hpa"]),
                       float(one["humidity_percent"]), wavelength)
    reference = refractivity(float(one["reference_temperature_c"]),
                             float(one["reference_pressure_hpa"]),
                             float(one["reference_humidity_percent"]), wavelength)
    slope = with_prism * (1 + reference * 1e-6) / (1 + air * 1e-6)
    places = list(control.values())
    radius, _ = earth_at(sum(p[0] for p in places) / len(places),
                         sum(p[1] for p in places) / len(places))
    begins = radius + station[2] + instrument
    bend = REFRACTION * slope / (2 * radius)
    z = math.radians(zenith) + bend
    up, across = slope * math.cos(z), slope * math.sin(z)
    arc = radius * math.atan2(across, begins + up)
    rise = math.hypot(begins + up, across) - begins
    middle = [station[i] + arc / 2 * f(math.radians(bearing)) for i, f in ((0, math.sin), (1, math.cos))]
    _, scale = earth_at(*middle)
    grid = arc * scale
    b = math.radians(bearing)
    return [("direction to CP2, both faces", direction["CP2"], "deg"),
            ("direction to P1, both faces", direction["P1"], "deg"),
            ("zenith angle to P1, both faces", zenith, "deg"),
            ("bearing CP1 to CP2", bearing_back, "deg"),
            ("bearing of the circle's zero", orientation, "deg"),
            ("bearing CP1 to P1", bearing, "deg"),
            ("distance shown, mean", shown, "m"),
            ("with the prism constant", with_prism, "m"),
            ("N of the day", air, "ppm"),
            ("N of the instrument's reference", reference, "ppm"),
            ("distance in the air of the day", slope, "m"),
            ("mean radius of the earth R", radius, "m"),
            ("bend of the ray k d / 2R", bend * SECONDS, "seconds"),
            ("arc at the ellipsoid", arc, "m"),
            ("rise from instrument to target", rise, "m"),
            ("point scale midway", scale, ""),
            ("grid length", grid, "m"),
            ("easting of P1", station[0] + grid * math.sin(b), "m"),
            ("northing of P1", station[1] + grid * math.cos(b), "m"),
            ("height of P1", station[2] + instrument + rise - float(one["target_height"]), "m")]


DIGITS = {"deg": 6, "m": 4, "ppm": 3, "seconds": 2, "": 9}


def printed(page):
    section = re.search(r"^## A worked sight\n(.*?)(?=^## |\Z)", page, re.M | re.S).group(1)
    return {m[1].strip(): m[2].strip() for m in re.finditer(r"^\| ([^|]+) \| ([^|]+) \|$", section, re.M)}


def told_by_program(program, source, job):
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name, "job")
        shutil.copytree(source / job, folder)
        done = subprocess.run([program, "field", str(folder), "--json", "--quiet"], text=True,
                              capture_output=True, check=True)
    return json.loads(done.stdout)


CAME_OUT = re.compile(r"came out at ([\d.]+),\s([\d.]+),\s([\d.]+)\swith\s([\d.]+)\smm\sat\smost\sin\splan\sand\s([\d.]+)"
                      r"\smm\sin\sheight")
INSTRUMENT = re.compile(r"index\scame\sout\sas\s([-\d.]+)\"\sand\sits\scollimation\sas\s([-\d.]+)\"")


def example_faults(page, result):
    """The figures that the first example says came out."""
    point = next(p for p in result["points"] if p["point"] == "A1")
    faces = result["setups"][0]["faces"]
    came = [f"{point['easting']:.4f}", f"{point['northing']:.4f}", f"{point['height']:.4f}",
            f"{max(point['sigma_e_mm'], point['sigma_n_mm']):.1f}", f"{point['sigma_h_mm']:.1f}"]
    said = CAME_OUT.search(page)
    if not said or list(said.groups()) != came:
        yield f"A1: the page says {said and said.groups()}, the program {came}"
    errors = [f"{faces['index_sec']:.1f}", f"{faces['collimation_sec']:.1f}"]
    said = INSTRUMENT.search(page)
    if not said or list(said.groups()) != errors:
        yield f"the instrument: the page says {said and said.groups()}, the program {errors}"


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    steps = work(source / JOB)
    shown = {label: f"{value:.{DIGITS[unit]}f} {unit}".strip() for label, value, unit in steps}
    if "--print" in sys.argv:
        print("\n".join(f"| {label} | {text} |" for label, text in shown.items()))
    text = (source / "docs" / "field.md").read_text(encoding="utf-8")
    page = printed(text)
    faults = [f"{label}: the page prints {page.get(label)}, the step gives {text}"
              for label, text in shown.items() if page.get(label) != text]
    faults += example_faults(text, told_by_program(program, source, FIRST))
    result = told_by_program(program, source, JOB)
    point = next(p for p in result["points"] if p["point"] == "P1")
    value = {label: number for label, number, _ in steps}
    for key in ("easting", "northing", "height"):
        if abs(point[key] - value[f"{key} of P1"]) > 2e-5:
            faults.append(f"{key}: the program gives {point[key]}, the steps {value[key + ' of P1']}")
    turned = result["setups"][0]["orientation_deg"] - value["bearing of the circle's zero"]
    if abs(turned) * 3600 > 1e-4:
        faults.append(f"orientation: the program differs by {turned * 3600} seconds")
    print("\n".join(faults) or f"{len(steps)} steps agree")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
