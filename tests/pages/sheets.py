#!/usr/bin/env python3
"""The sheets through the tools that read PDF. Usage: sheets.py PROGRAM SOURCE

Text can be taken out, fonts are embedded, pages are A3 and A4, the bar is 100 mm long on paper, and a
second run gives the same bytes. What every sheet and page must say is there; the overprint comes when it must.
"""
import html
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

MM = 72 / 25.4
# what every sheet and page says, whatever the job
STANDING = (
    "Dimensions only.", "Batters, shoring, dewatering, access and entry are decided on site by a competent person "
    "under local law.", "Rain, vibration and loads change the ground: inspect again.",
    "No leave to enter or to stand within the machine's reach.",
    "Locate buried and overhead services; only those entered are shown.",
    "Fence the edge; keep spoil and plant back as directed.",
    "Nearby footings can be undermined: ask the engineer.",
    "No plant over the tank before its designer's cover.", "An empty tank can float before it is covered.",
    "\"Conforms\" means the entered tolerances, at the points and time surveyed; nothing about bearing or how the "
    "sides will stand.")
NEVER = ("safe", "compliant", "stable", "approved")
OVERPRINT = "NO BATTER GIVEN: support by others"
A3, A4, A4_ACROSS = (420, 297), (210, 297), (297, 210)
BAR, DOTS = 100, 10  # mm, dots to the millimetre


def out(*command):
    return subprocess.run(command, check=True, capture_output=True).stdout


def sizes(pdf):
    """Width and height of each page in whole millimetres."""
    text = out("pdfinfo", "-l", "9999", str(pdf)).decode()
    return [(round(float(w) / MM), round(float(h) / MM)) for w, h in
            re.findall(r"Page +\d+ size: +([\d.]+) x ([\d.]+) pts", text)]


def longest_dark_run(row):
    best = run = 0
    for dot in row:
        run = run + 1 if dot < 128 else 0
        best = max(best, run)
    return best


def bar_length(pdf, height):
    """The bar in dots: the longest dark run at the left above the foot of the first page, where the rule
    over the foot is longer and other lines are shorter."""
    pgm = out("pdftoppm", "-gray", "-r", str(25.4 * DOTS), "-f", "1", "-l", "1", str(pdf))
    _, width, rows = pgm.split(b"\n", 3)[0], *map(int, pgm.split(b"\n", 3)[1].split())
    dots = pgm[-width * rows:]
    runs = set()
    for y in range((height - 30) * DOTS, (height - 5) * DOTS):
        runs.add(longest_dark_run(dots[y * width:(y + 1) * width]))
    return min(runs, key=lambda run: abs(run - BAR * DOTS))


def check(pdf, text, faults):
    fonts = out("pdffonts", str(pdf)).decode().splitlines()[2:]
    if not fonts or any(line.split()[-5] != "yes" for line in fonts):
        faults.append(f"{pdf.name}: fonts not embedded: {fonts}")
    pages = sizes(pdf)
    # the dig sheet: one A3, the plan for the cab across A4, the rest upright
    across = max(1, pages.count(A4_ACROSS))
    first = [A3] + [A4_ACROSS] * across if pdf.name == "dig.pdf" else []
    if pages != first + [A4] * (len(pages) - len(first)):
        faults.append(f"{pdf.name}: pages of {pages}")
    length = bar_length(pdf, pages[0][1])
    if abs(length - BAR * DOTS) > 3:
        faults.append(f"{pdf.name}: the bar is {length / DOTS} mm long")
    for n in range(1, len(pages) + 1):
        if f"page {n} of {len(pages)}" not in text:
            faults.append(f"{pdf.name}: no \"page {n} of {len(pages)}\"")
    words(pdf.name, text, faults)


def words(name, text, faults):
    text = re.sub(r"\s+", " ", text)
    for word in ("measure me: 100 mm", "Alderbrook school, car park tank", *STANDING):
        if word not in text:
            faults.append(f"{name}: no text \"{word}\"")
    for word in NEVER:
        if re.search(rf"\b{word}\b", text, re.I):
            faults.append(f"{name}: says \"{word}\"")


def check_page(page, faults):
    text = page.read_text(encoding="utf-8")
    body = re.sub(r"<(style|script)\b.*?</\1>", " ", text[text.index("<body"):], flags=re.S)
    words(page.name, html.unescape(re.sub(r"<[^>]*>", "", body)), faults)


def check_overprint(program, source, folder, faults):
    """Without a name behind the batters, and where a vertical face is deeper than the job's depth; not else."""
    given = re.compile(r"^batter_given_by.*$", re.M)
    vertical = (re.compile(r'^batter  = "1:1"', re.M),
                'batter = { AB = "0:1", BC = "1:1", CD = "1:1", DA = "1:1" }')
    depth = re.compile(r"^vertical_caution_depth.*$", re.M)
    cases = {"given": ([], False), "not given": ([(given, "")], True), "deep": ([vertical], True),
             "shallow": ([vertical, (depth, "vertical_caution_depth = 9.0")], False)}
    for name, (edits, wanted) in cases.items():
        job = pathlib.Path(folder, name)
        shutil.copytree(source / "demo" / "alderbrook", job, ignore=shutil.ignore_patterns("out"))
        text = (job / "job.toml").read_text(encoding="utf-8")
        for pattern, new in edits:
            text, count = pattern.subn(new, text, count=1)
            if count != 1:
                raise SystemExit(f"the demo job has no {pattern.pattern}")
        (job / "job.toml").write_text(text, encoding="utf-8")
        subprocess.run([program, "dig", str(job), "--quiet"], check=False, stdout=subprocess.DEVNULL,
                       timeout=120)
        plan = out("pdftotext", "-l", "1", str(job / "out" / "dig.pdf"), "-").decode()
        page = (job / "out" / "dig.html").read_text(encoding="utf-8")
        on_plan = f">{OVERPRINT}</text>" in page
        # across the plan of the sheet, and again at the head of the cautions
        if (OVERPRINT in plan) != wanted or on_plan != wanted:
            faults.append(f"dig, batter {name}: overprint on paper {OVERPRINT in plan}, on the page {on_plan}")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    faults = []
    with tempfile.TemporaryDirectory() as name:
        runs = []
        for n in (1, 2):
            job = pathlib.Path(name, str(n))
            shutil.copytree(source / "demo" / "alderbrook", job,
                            ignore=shutil.ignore_patterns("out"))
            subprocess.run([program, "run", str(job), "--quiet"], check=False,
                           stdout=subprocess.DEVNULL, timeout=120)
            runs.append(job / "out")
        sheets = sorted(runs[0].glob("*.pdf"))
        if {"base.pdf", "dig.pdf", "fill.pdf", "pegs.pdf", "record.pdf"} != {s.name for s in sheets}:
            faults.append(f"sheets: {sheets}")
        for pdf in sheets:
            if pdf.read_bytes() != (runs[1] / pdf.name).read_bytes():
                faults.append(f"{pdf.name}: another run, other bytes")
            check(pdf, out("pdftotext", "-raw", str(pdf), "-").decode(), faults)
        for page in sorted(runs[0].glob("*.html")):
            check_page(page, faults)
        check_overprint(program, source, name, faults)
        dig = out("pdftotext", "-layout", str(runs[0] / "dig.pdf"), "-").decode()
        for line in (runs[0] / "cells.csv").read_text().splitlines()[1:]:
            label = line.split(",")
            if label[6] and not re.search(rf"(?<!\S){re.escape(label[0])}(?!\S)", dig):
                faults.append(f"dig.pdf: cell {label[0]} is not in its list")
        print("\n".join(faults) or f"{len(sheets)} sheets")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
