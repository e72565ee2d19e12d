#!/usr/bin/env python3
"""The demo's fills close, added up from what the files say. Usage: fill.py PROGRAM SOURCE

The demo stands on uneven ground with a ramp and a trench. All fills = cut + fill to floor + above ground -
left open, to 1e-9 of the cut: with the finish at the ground, at a level above it, and at one below it.
The cut is that of dig.json; quantities.csv says what fill.json says; the least cover over the tank is
that of the ground's own formula.
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


def run(program, folder, stage):
    done = subprocess.run([program, stage, ".", "--json", "--quiet"], cwd=folder, check=False,
                          capture_output=True, text=True, timeout=120)
    if done.returncode not in (0, 1):
        raise SystemExit(f"{stage}: exit {done.returncode}: {done.stderr}")
    return json.loads(done.stdout)


def closes(fill, dig, what):
    cut = dig["cut_bank_m3"]
    parts = [fill[f"{p}_m3"] for p in ("bedding", "tank", "pipe", "ramp", "sump", "trench", "finish",
                                       "fill_to_floor")]
    parts += [p["compacted_m3"] for p in fill["side_fill"] + fill["capping"]]
    wanted = cut + fill["fill_to_floor_m3"] + fill["above_ground_m3"] - fill["left_open_m3"]
    check(abs(sum(parts) - wanted) <= 1e-9 * cut, f"{what}: fills {sum(parts)}, wanted {wanted}")
    check(abs(fill["closure"]["difference_m3"]) <= 1e-9 * cut, f"{what}: {fill['closure']}")
    check(abs(fill["closure"]["cut_m3"] - cut) <= 1e-9 * cut, f"{what}: another cut than the dig's")
    check(fill["ramp_m3"] > 10 and fill["trench_m3"] > 10, f"{what}: no ramp or no trench")
    check(abs(sum(p["compacted_m3"] for p in fill["side_fill"]) - fill["side_fill_m3"]) < 1e-9 * cut,
          f"{what}: the lifts are not the side fill")


def least_cover(source):
    """From the formula the ground's points were made with: tank top under it, every 0.2 m."""
    sys.path.insert(0, str(source / "demo"))
    import make_field_files as made
    least = 1e9
    for i in range(121):
        for k in range(49):
            along, across = 24.0 * i / 120, 9.6 * k / 48
            e, n = made.on_tank(along, across)
            top = made.UNDERSIDE_AT_A + made.HEIGHT - made.FALL * across
            least = min(least, made.ground(e - made.ORIGIN[0], n - made.ORIGIN[1]) - top)
    return least


def same_as_table(folder, fill):
    rows = list(csv.DictReader((folder / "out" / "quantities.csv").open(encoding="utf-8")))
    by_item = {row["item"]: row for row in rows}
    for material in fill["materials"]:
        row = by_item[material["material"]]
        for key in ("compacted_m3", "bank_m3", "loose_m3", "tonnes"):
            want = material[key]
            check((row[key] == "") if want is None else float(row[key]) == want,
                  f"quantities.csv: {row['item']} {key}")
        check(abs(material["compacted_m3"] - 0.90 * material["bank_m3"]) < 1e-9, row["item"])
        check(abs(material["loose_m3"] - 1.25 * material["bank_m3"]) < 1e-9, row["item"])
    for sheet in ("geotextile", "geogrid", "liner"):
        check(int(by_item[sheet]["rolls"]) == fill[sheet]["rolls"], f"quantities.csv: {sheet}")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).resolve()
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name) / "job"
        shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
        dig, fill = run(program, folder, "dig"), run(program, folder, "fill")
        closes(fill, dig, "finish at the ground")
        check(fill["above_ground_m3"] == 0 and fill["left_open_m3"] == 0, "a finish off the ground")
        same_as_table(folder, fill)
        found, formula = fill["least_cover_found_m"], least_cover(source)
        check(abs(found - formula) < 0.015, f"least cover {found}, by the ground's formula {formula}")
        job = folder / "job.toml"
        text = job.read_text(encoding="utf-8")
        for level, grows in ((65.2, "above_ground_m3"), (64.3, "left_open_m3")):
            job.write_text(text.replace('finish = "ground"', f"finish = {level}"), encoding="utf-8")
            other = run(program, folder, "fill")
            closes(other, dig, f"finish at {level}")
            check(other[grows] > 10, f"finish at {level}: {grows} is {other[grows]}")
    print("\n".join(FAULTS) if FAULTS else "all fills close on the cut")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
