#!/usr/bin/env python3
"""Writes the field files of the invented job in demo/alderbrook, the same bytes every time.

The ground is a formula: a car park that falls to the south-east, a kerb, and a grass bank behind
it. The surveyed base is the planned floor with a millimetre or two of unevenness and two faults:
one high spot and one low patch. The fill goes in evenly on all sides; the capping is level but for one
place where its second layer is thin. Nothing here is random; `wobble` is a fixed sequence.
"""
import math
import pathlib

FOLDER = pathlib.Path(__file__).parent / "alderbrook"
ORIGIN = (715830.0, 734697.0)
CORNER_A = (715830.250, 734697.600)
BEARING_AB = math.radians(37.5)
LENGTH, WIDTH, HEIGHT, GAP = 24.0, 9.6, 1.32, 0.2
UNDERSIDE_AT_A = 62.350
DIG_LEVEL_AT_A = UNDERSIDE_AT_A - 0.020
CAPPING, CAPPING_BEYOND = 0.150, 0.5
PEG_OFFSET = 4.0
FALL = 0.005  # across the tank, from side AB to side CD
KERB_UPSTAND, KERB_WIDTH = 0.125, 0.150


def wobble(i, k):
    """A fixed number between -1 and 1 for the point (i, k)."""
    return ((i * 7919 + k * 104729 + i * k * 31) % 2003) / 1001.0 - 1.0


def kerb_north(x):
    """The line of the kerb's face, north of the origin at x east of it."""
    return 16.5 + 0.13 * x + 0.0015 * x * x


def paved(x, y):
    return 64.62 - 0.011 * x + 0.006 * y + 0.035 * math.sin(x / 9.0) * math.cos(y / 7.0)


def ground(x, y):
    behind = y - kerb_north(x)
    if behind <= 0:
        return paved(x, y)
    rise = 0.055 * behind + 0.05 * math.sin(x / 6.0) * min(1.0, behind / 4.0)
    return paved(x, kerb_north(x)) + KERB_UPSTAND + rise


def grid(x, y):
    return ORIGIN[0] + x, ORIGIN[1] + y


def on_tank(along, across):
    """Easting and northing of a place so far along A-B and so far to the right of it."""
    s, c = math.sin(BEARING_AB), math.cos(BEARING_AB)
    return (CORNER_A[0] + along * s + across * c, CORNER_A[1] + along * c - across * s)


def write(name, comment, header, rows):
    text = f"# {comment}\n{header}\n" + "".join(",".join(row) + "\n" for row in rows)
    (FOLDER / name).write_text(text, encoding="utf-8", newline="\n")


def place(e, n, h):
    return [f"{e:.3f}", f"{n:.3f}", f"{h:.3f}"]


def ground_points():
    rows = []
    for i in range(22):
        for k in range(21):
            x = -36.0 + 4.0 * i + 1.2 * wobble(i, k)
            y = -34.0 + 4.0 * k + 1.2 * wobble(k + 50, i)
            if not (-38.0 < x < 49.0 and -35.5 < y < 47.5) or abs(y - kerb_north(x)) < 0.6:
                continue
            h = ground(x, y) + 0.006 * wobble(i + 9, k + 4)
            rows.append([f"G{len(rows) + 1}", *place(*grid(x, y), h), "GL"])
    rows.append(["T1", *place(*grid(31.2, 33.4), ground(31.2, 33.4) + 0.41), "TREE"])
    rows.append(["M1", *place(*grid(-11.7, -9.3), ground(-11.7, -9.3) - 1.35), "INVERT"])
    return rows


def kerb_rows():
    rows = []
    for name, behind, upstand in (("kerb face", 0.0, 0.0), ("kerb top", KERB_WIDTH, KERB_UPSTAND)):
        for i in range(24):
            x = -38.5 + 88.0 * i / 23
            rows.append([name, *place(*grid(x, kerb_north(x) + behind),
                                      paved(x, kerb_north(x)) + upstand)])
    return rows


def outline_rows():
    corners = [(-39.0, -36.0), (50.0, -36.0), (50.0, 48.0), (-39.0, 48.0)]
    rows = []
    for (x0, y0), (x1, y1) in zip(corners, corners[1:] + corners[:1]):
        for i in range(12):
            x, y = x0 + (x1 - x0) * i / 12, y0 + (y1 - y0) * i / 12
            rows.append(["edge", *place(*grid(x, y), ground(x, y))])
    return rows


def control_rows():
    marks = {"CP1": (-18.42, -12.77), "CP2": (38.65, -21.08), "CP3": (41.30, 36.51)}
    rows = [[name, *place(*grid(x, y), ground(x, y) + 0.02), "CONTROL"]
            for name, (x, y) in marks.items()]
    rows.append(["BM1", *place(*grid(-22.05, 8.36), 64.912), "BENCHMARK"])
    rows.append(["BM2", *place(*grid(33.18, -9.94), 64.385), "BENCHMARK"])
    return rows


def base_deviation_mm(along, across):
    even = -0.8 + 1.1 * math.sin(along / 2.6) * math.cos(across / 2.1)
    high_spot = 19.0 * math.exp(-((along - 7.0) ** 2 + (across - 2.7) ** 2) / 0.5)
    in_patch = max(0.0, 1.0 - ((along - 17.0) / 2.6) ** 2 - ((across - 6.9) / 2.0) ** 2)
    return even + high_spot - 27.0 * min(1.0, 2.0 * in_patch)


def floor_level(across):
    return DIG_LEVEL_AT_A - FALL * across


def base_rows():
    rows = []
    for i in range(18):
        for k in range(8):
            along, across = -0.1 + 24.2 * i / 17, -0.1 + 9.8 * k / 7
            h = floor_level(across) + base_deviation_mm(along, across) / 1000.0
            rows.append([f"B{len(rows) + 1}", *(f"{v:.3f}" for v in on_tank(along, across)),
                         f"{h:.4f}", "BASE"])
    return rows


def toe_rows():
    ring = [(-GAP, -GAP), (LENGTH + GAP, -GAP), (LENGTH + GAP, WIDTH + GAP), (-GAP, WIDTH + GAP)]
    rows = []
    for side, ((a0, c0), (a1, c1)) in enumerate(zip(ring, ring[1:] + ring[:1])):
        for i in range(8):
            along, across = a0 + (a1 - a0) * i / 8, c0 + (c1 - c0) * i / 8
            out = 0.012 * wobble(side + 3, i + 1)
            away = math.hypot(along - LENGTH / 2, across - WIDTH / 2)
            along += out * (along - LENGTH / 2) / away
            across += out * (across - WIDTH / 2) / away
            h = floor_level(across) + 0.004 * wobble(i, side)
            rows.append([f"K{len(rows) + 1}", *(f"{v:.3f}" for v in on_tank(along, across)),
                         f"{h:.4f}", "TOE"])
    return rows


def pegs_as_set():
    """The eight reference pegs as set, PEG_OFFSET beyond their corners, some millimetres off."""
    corners = {"A": (0.0, 0.0), "B": (LENGTH, 0.0), "C": (LENGTH, WIDTH), "D": (0.0, WIDTH)}
    outward = {"A1": (-1, 0), "A2": (0, -1), "B1": (0, -1), "B2": (1, 0),
               "C1": (1, 0), "C2": (0, 1), "D1": (0, 1), "D2": (-1, 0)}
    rows = []
    for i, (name, (along, across)) in enumerate(outward.items()):
        a0, c0 = corners[name[0]]
        e, n = on_tank(a0 + PEG_OFFSET * along + 0.003 * wobble(i, 3),
                       c0 + PEG_OFFSET * across + 0.003 * wobble(i, 8))
        rows.append([name, f"{e:.3f}", f"{n:.3f}", f"{ground(e - ORIGIN[0], n - ORIGIN[1]):.3f}",
                     "PEG", "2.0"])
    return rows


def taped():
    diagonal = math.hypot(LENGTH, WIDTH)
    lengths = {"AB": LENGTH, "BC": WIDTH, "CD": LENGTH, "DA": WIDTH, "AC": diagonal, "BD": diagonal}
    return [[name[0], name[1], f"{length + 0.002 * wobble(7 * i + 2, 11):.3f}"]
            for i, (name, length) in enumerate(lengths.items())]


def boundary_rows():
    corners = [(-31.0, -34.0), (47.0, -33.0), (48.0, 46.0), (-32.0, 45.0), (-31.0, -34.0)]
    return [["boundary", *(f"{v:.3f}" for v in grid(x, y)), ""] for x, y in corners]


def service_rows():
    rows = []
    for x, y in [(-30.0, -20.0), (-2.0, -19.0), (21.0, -16.5), (46.0, -16.0)]:
        rows.append(["water main", *place(*grid(x, y), ground(x, y) - 0.90)])
    return rows


def capping_rows(layer):
    """The top of a capping layer as placed, past the edge of the capping all round."""
    rows = []
    past = CAPPING_BEYOND + 0.1
    for i in range(18):
        for k in range(8):
            along = -past + (LENGTH + 2 * past) * i / 17
            across = -past + (WIDTH + 2 * past) * k / 7
            h = UNDERSIDE_AT_A - FALL * across + HEIGHT + layer * CAPPING
            h += 0.003 * wobble(i + 20 * layer, k + 7)
            if layer > 1:  # the second layer is thin here, and the third follows it
                h -= 0.034 * math.exp(-((along - 14.8) ** 2 + (across - 4.0) ** 2) / 1.2)
            rows.append([f"L{layer}-{len(rows) + 1}", *(f"{v:.3f}" for v in on_tank(along, across)),
                         f"{h:.4f}", "CAP", "2.0"])
    return rows


def lift_rows():
    """Lifts of 0.3 m right round the tank, one side after the other."""
    rows = []
    for lift in range(1, 6):
        for side in ("AB", "CD", "BC", "DA"):
            rows.append([str(lift), side, f"2026-03-{23 + lift}", f"{min(HEIGHT, 0.3 * lift):.2f}"])
    return rows


def compaction_rows():
    """Dry densities: of two lifts one on each side, of each capping layer six over the tank."""
    beside = [(12.0, -0.6), (24.6, 4.8), (12.0, 10.2), (-0.6, 4.8)]
    over = [(4.0, 2.4), (12.0, 2.4), (20.0, 2.4), (4.0, 7.2), (12.0, 7.2), (20.0, 7.2)]
    places = [(f"lift {n}", p, 1.90) for n in (2, 4) for p in beside]
    places += [(f"cap {n}", p, 2.16) for n in (1, 2, 3) for p in over]
    return [[layer, *(f"{v:.3f}" for v in on_tank(*place)),
             f"{most * (0.970 + 0.016 * wobble(3 * i + 1, 5)):.3f}", f"{most:.2f}"]
            for i, (layer, place, most) in enumerate(places)]


def main():
    points = "point,easting,northing,height,code"
    strings = "string,easting,northing,height"
    write("ground.csv", "invented: ground before the dig", points, ground_points())
    write("kerb.csv", "invented: kerb of the car park, bottom and top of its face", strings,
          kerb_rows())
    write("outline.csv", "invented: edge of the survey", strings, outline_rows())
    write("control.csv", "invented: control points and benchmarks", points, control_rows())
    write("boundary.csv", "invented: line the dig must keep clear of", strings, boundary_rows())
    write("services.csv", "invented: buried services, level of their top", strings, service_rows())
    write("as-set.csv", "invented: reference pegs as set, two pointings each",
          "point,easting,northing,height,code,sigma_plan_mm", pegs_as_set())
    write("tape.csv", "invented: sides and diagonals taped between the corner pins before the dig",
          "from,to,length", taped())
    write("as-dug.csv", "invented: base and toe as dug", points, base_rows() + toe_rows())
    for layer in (1, 2, 3):
        write(f"cap{layer}.csv", f"invented: top of capping layer {layer} as placed",
              points + ",sigma_height_mm", capping_rows(layer))
    write("lifts.csv", "invented: log of the side fill", "lift,side,date,height_above_underside",
          lift_rows())
    write("compaction.csv", "invented: compaction tests, t/m3",
          "layer,easting,northing,dry_density,maximum_dry_density", compaction_rows())


if __name__ == "__main__":
    main()
