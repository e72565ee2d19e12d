#!/usr/bin/env python3
"""What is set out from pegs.csv comes back as it was designed. Usage: pegs.py PROGRAM SOURCE

The demo's pegs.csv is measured exactly (it is given back as the pegs as set): every delta is zero. One
peg moved 30 mm along its string is named, with amount and direction. Hard names of pipes survive in
every file that other programs read.
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

HARD = ["inlet, north", "the \\\"old\\\" drain", "=1+1", "Zufluss Süd 入口 Ø300", "x" * 64]
SPELT = [name.replace('\\"', '"') for name in HARD]
FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


def run(program, folder, wanted):
    done = subprocess.run([program, "pegs", ".", "--quiet"], cwd=folder, capture_output=True,
                          text=True, check=False, timeout=120)
    if done.returncode not in wanted:
        raise SystemExit(f"exit {done.returncode}, wanted {wanted}: {done.stderr}")
    return json.loads((folder / "out" / "pegs.json").read_text(encoding="utf-8"))


def measured(folder, move=None):
    """Gives pegs.csv back as the pegs as set; `move` is (peg, easting, northing) in metres."""
    rows = list(csv.DictReader((folder / "out" / "pegs.csv").open(encoding="utf-8", newline="")))
    with (folder / "as-set.csv").open("w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out)
        writer.writerow(["point", "easting", "northing", "sigma_plan_mm"])
        for row in rows:
            e, n = float(row["easting"]), float(row["northing"])
            if move and row["point"] == move[0]:
                e, n = e + move[1], n + move[2]
            writer.writerow([row["point"], repr(e), repr(n), 1])


def zero_everywhere(result):
    as_set = result["as_set"]
    check(as_set["verdict"] == "conforms", f"verdict {as_set['verdict']}")
    for point in as_set["points"]:
        for key in ("delta_e_mm", "delta_n_mm", "along_mm", "across_mm"):
            check(point[key] == 0, f"{point['name']} {key} is {point[key]}")
    for corner in as_set["corners"]:
        check(corner["off_mm"] < 1e-5, f"corner {corner['name']} is {corner['off_mm']} mm off")
    for have, want in zip(as_set["sides_m"] + as_set["diagonals_m"],
                          result["sides_m"] + result["diagonals_m"]):
        check(abs(have - want) < 1e-8, f"{have} for {want}")
    check(abs(as_set["diagonal_difference_mm"]) < 1e-5, "the diagonals differ")
    check(as_set["move"] == [], f"moves {as_set['move']}")


def named(result, corner):
    as_set = result["as_set"]
    point = next(p for p in as_set["points"] if p["name"] == "B2")
    check(abs(point["along_mm"] - 30) < 1e-4, f"B2 is {point['along_mm']} mm along")
    check(abs(point["across_mm"]) < 1e-4, f"B2 is {point['across_mm']} mm across")
    check([m["name"] for m in as_set["move"]] == ["B2"], f"moves {as_set['move']}")
    check(abs(as_set["move"][0]["along_mm"] + 30) < 1e-4, f"moves {as_set['move']}")
    check(as_set["move_words"] == f"Move peg B2 30.0 mm toward corner {corner}.", as_set["move_words"])
    check(as_set["verdict"] == "does not conform", f"verdict {as_set['verdict']}")


def spelled_out(text):
    return re.sub(r"\\U\+([0-9A-F]{4})", lambda m: chr(int(m.group(1), 16)), text)


def other_program(*command):
    if not shutil.which(command[0]):
        print(f"skipped: no {command[0]}")
        return None
    return subprocess.run(command, capture_output=True, text=True, check=True, timeout=60).stdout


def hard_names(folder, result):
    out = folder / "out"
    check([p["name"] for p in result["pipes"]] == SPELT, "pegs.json changes a name")
    rows = list(csv.DictReader((out / "pegs.csv").open(encoding="utf-8", newline="")))
    wanted = [("'" if name.startswith("=") else "") + name for name in SPELT]
    check([r["point"] for r in rows if r["code"] == "PIPE"] == wanted, "pegs.csv changes a name")
    check(any("=1+1" in c and "apostrophe" in c for c in result["cautions"]), "the formula is not told")
    drawing = other_program("ogrinfo", "-ro", "-al", str(out / "pegs.dxf"))
    if drawing is not None:
        lines = spelled_out(drawing)
        check(all(f"Text (String) = {name}\n" in lines for name in SPELT), "pegs.dxf changes a name")
    mapped = other_program("ogrinfo", "-ro", "-al", str(out / "pegs.geojson"))
    if mapped is not None:
        check(all(f"name (String) = {name}\n" in mapped for name in SPELT),
              "pegs.geojson changes a name")
    other_program("xmllint", "--noout", str(out / "pegs.xml"))
    points = other_program("xmllint", "--xpath", "//*[local-name()='CgPoint']/@name",
                           str(out / "pegs.xml"))
    if points is not None:
        plain = points.replace("&quot;", '"')
        check(all(name in plain for name in SPELT), "pegs.xml changes a name")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name) / "job"
        shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
        run(program, folder, (0, 1))
        measured(folder)
        first = run(program, folder, (0, 1))
        zero_everywhere(first)
        b2, b = (next(p for p in first[k] if p["name"] == n)
                 for k, n in (("reference", "B2"), ("corners", "B")))
        e, n = b2["easting"] - b["easting"], b2["northing"] - b["northing"]
        length = math.hypot(e, n)
        measured(folder, ("B2", 0.030 * e / length, 0.030 * n / length))
        named(run(program, folder, (1,)), "B")

        job = folder / "job.toml"
        text = re.sub(r"\[\[tank\.pipe\]\]\n(?:\S.*\n)+", "", job.read_text(encoding="utf-8"))
        pipes = "".join(f'[[tank.pipe]]\nname = "{pipe}"\nside = "AB"\nalong = {2 + 2 * i}\n'
                        f"invert = 63.1\ndiameter_mm = 100.0\n" for i, pipe in enumerate(HARD))
        job.write_text(text.replace("[bedding]", pipes + "[bedding]"), encoding="utf-8")
        hard_names(folder, run(program, folder, (0, 1)))
    print("\n".join(FAULTS) if FAULTS else "as set as designed: zero everywhere")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
