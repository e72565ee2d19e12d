#!/usr/bin/env python3
"""Whole runs measured: time and peak memory by size. Usage: whole.py PROGRAM MADE_SURVEY [--script] SIZE...

SIZE is a number of points such as 1e6. In one run for each size: `check` (which reads and computes
nothing), `dig`, and `run`; with --script also script.py doing the same work. Each figure is the median of
three runs, one for the script. Ratios are of processor time, which says the same on a busy machine: to
`check`, and of the script to the program. Prints a table in Markdown, volumes beside each other.
"""
import json
import math
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time

HERE = pathlib.Path(__file__).parent


def once(command):
    """(seconds, processor seconds, peak MB, output): wait4 tells them of that process alone."""
    with tempfile.TemporaryFile("w+") as out, tempfile.TemporaryFile("w+") as fault:
        begun = time.monotonic()
        process = subprocess.Popen(command, stdout=out, stderr=fault)  # pylint: disable=consider-using-with
        _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        took = time.monotonic() - begun
        if process.returncode not in (0, 1):
            fault.seek(0)
            raise SystemExit(f"{command}: exit {process.returncode}\n{fault.read()}")
        out.seek(0)
        return took, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024, out.read()


def measured(command, times):
    runs = [once(command) for _ in range(times)]
    return [statistics.median(r[i] for r in runs) for i in (0, 1)] + [max(r[2] for r in runs), runs[-1][3]]


def pit_of(folder):
    """What script.py needs of the pit, as design values, from the job and dig.json."""
    dig = json.loads((folder / "out" / "dig.json").read_text(encoding="utf-8"))
    at_a = next(rung["level"] for rung in dig["levels"] if rung["name"] == "dig level" and rung["at"] == "A")
    downhill = math.radians(127.5)
    text = (folder / "job.toml").read_text(encoding="utf-8")
    corner = json.loads(text.split("corner_a = ")[1].split("\n")[0])
    pit = {"corner_a": corner, "bearing": 37.5, "length": 24.0, "width": 9.6, "gap": 0.2, "level": at_a,
           "slope": [-0.005 * math.sin(downhill), -0.005 * math.cos(downhill)], "reach": 6.0,
           "crs": "EPSG:32633"}
    (folder / "script.json").write_text(json.dumps(pit), encoding="utf-8")
    return dig["cut_bank_m3"]


def row(*cells):
    print("| " + " | ".join(str(cell) for cell in cells) + " |", flush=True)


def measure(program, maker, size, script):
    with tempfile.TemporaryDirectory() as made:
        folder = pathlib.Path(made)
        subprocess.run([maker, size, made], check=True)
        times = 3 if float(size) <= 1e7 else 1
        job = [program, None, made, "--quiet"]
        processor = {}
        stages = ["check", "dig"] + (["run"] if float(size) <= 1e7 else [])
        for stage in stages:
            job[1] = stage
            seconds, processor[stage], memory, _ = measured(job, times)
            ratio = processor[stage] / processor["check"]
            row(size, stage, f"{seconds:.2f}", f"{processor[stage]:.2f}", f"{memory:.0f}", f"{ratio:.2f}")
        if script:
            volume = pit_of(folder)
            for stage in ("dig", "run"):
                command = ["/usr/bin/python3", HERE / "script.py", folder, stage]
                seconds, took, memory, text = measured(command, 1)
                row(size, f"script, {stage}", f"{seconds:.2f}", f"{took:.2f}", f"{memory:.0f}",
                    f"{took / processor[stage]:.1f} x")
                print(f"volume {float(text):.2f} by the script, {volume:.2f} m3 by the program")


def main():
    arguments = [a for a in sys.argv[1:] if a != "--script"]
    program, maker, *sizes = arguments
    row("points", "work", "seconds", "processor s", "peak MB", "ratio")
    row(*["---"] * 6)
    for size in sizes:
        measure(program, maker, size, "--script" in sys.argv)


if __name__ == "__main__":
    main()
