#!/usr/bin/env python3
"""A full disk, a folder that may not be written, a file that vanishes. Usage: storage.py PROGRAM SOURCE

Whatever happens, the exit status is 3, the earlier results are whole, and nothing half-made is left
beside them. A full disk and a read-only one are small file systems in memory, which only root may make;
without root these two parts are skipped, and that is said.
"""
import pathlib
import random
import shutil
import subprocess
import sys
import tempfile
import time

SEED = 20260321
VANISHINGS = 20
FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


def files(folder):
    return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}


def run(program, folder, *arguments, stdout=subprocess.DEVNULL):
    return subprocess.run([program, *arguments], cwd=folder, check=False, stdout=stdout,
                          stderr=subprocess.PIPE, text=True, timeout=300)


def demo(source, folder):
    shutil.copytree(source / "demo" / "alderbrook", folder, ignore=shutil.ignore_patterns("out"))
    return folder


class Memory:
    """A file system in memory of so many bytes, or None where it cannot be had."""

    def __init__(self, folder):
        self.folder = folder
        folder.mkdir()

    def mount(self, options):
        done = subprocess.run(["mount", "-t", "tmpfs", "-o", options, "none", self.folder],
                              capture_output=True, check=False)
        return done.returncode == 0

    def remount(self, options):
        subprocess.run(["mount", "-o", f"remount,{options}", self.folder], check=True)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        subprocess.run(["umount", self.folder], capture_output=True, check=False)


def said_of_storage(done, what):
    check(done.returncode == 3, f"{what}: exit {done.returncode}: {done.stderr}")
    lines = done.stderr.splitlines()
    check(len(lines) >= 1 and all(line.count(";") >= 2 for line in lines), f"{what}: said {done.stderr!r}")


def full_disk(program, source, folder):
    """Disks with room for the first results and less and less for the second."""
    with Memory(folder / "full") as memory:
        if not memory.mount("size=64m"):
            print("skipped: a full disk: only root may make one")
            return
        job = demo(source, memory.folder / "job")
        check(run(program, job, "run", ".", "--quiet").returncode == 1, "the first run on the small disk")
        before = files(job)
        used = shutil.disk_usage(memory.folder).used
        room = sum(len(b) for name, b in before.items() if name.startswith("out/"))
        text = (job / "job.toml").read_text(encoding="utf-8")
        (job / "job.toml").write_text(text.replace("truck_m3 = 12.0", "truck_m3 = 9.0"), encoding="utf-8")
        before["job.toml"] = (job / "job.toml").read_bytes()
        for part in (0.0, 0.02, 0.1, 0.3, 0.6, 0.9):
            memory.remount(f"size={(int(used + part * room) // 4096 + 2) * 4096}")
            said_of_storage(run(program, job, "run", ".", "--quiet"), f"full disk, room for {part}")
            check(files(job) == before, f"full disk, room for {part}: something else than before is there")
        memory.remount("size=64m")
        check(run(program, job, "run", ".", "--quiet").returncode == 1, "the run with room again")
        check(files(job) != before, "the run with room again wrote nothing")


def read_only(program, source, folder):
    with Memory(folder / "readonly") as memory:
        if not memory.mount("size=64m"):
            print("skipped: a read-only disk: only root may make one")
            return
        job = demo(source, memory.folder / "job")
        run(program, job, "run", ".", "--quiet")
        before = files(job)
        memory.remount("ro")
        said_of_storage(run(program, job, "run", ".", "--quiet"), "read-only disk")
        said_of_storage(run(program, job, "new", "fresh"), "new on a read-only disk")
        check(files(job) == before, "read-only disk: something else than before is there")


def vanishing(program, source, folder):
    """A field file goes away at a random moment of the run."""
    rng = random.Random(SEED)
    job = demo(source, folder / "vanishing")
    start = time.monotonic()
    run(program, job, "run", ".", "--quiet")
    seconds = time.monotonic() - start
    whole = files(job / "out")
    refused = 0
    for number in range(VANISHINGS):
        name = rng.choice(["ground.csv", "control.csv", "as-dug.csv"])
        child = subprocess.Popen([program, "run", ".", "--quiet"], cwd=job, stdout=subprocess.DEVNULL,
                                 stderr=subprocess.PIPE, text=True)
        time.sleep(rng.uniform(0, 0.3 * seconds))
        (job / name).rename(job / "away")
        _, said = child.communicate(timeout=300)
        (job / "away").rename(job / name)
        check(child.returncode in (1, 3), f"round {number}, seed {SEED}: exit {child.returncode}: {said}")
        check(child.returncode == 1 or f"{name}:1:1: cannot be opened" in said, f"round {number}: {said}")
        check(files(job / "out") == whole, f"round {number}, seed {SEED}: other files than before")
        refused += child.returncode == 3
    check(refused > 0, f"no run of {VANISHINGS} met the file that was away, seed {SEED}")


def full_output(program, source, folder):
    """Standard output that takes nothing."""
    job = demo(source, folder / "output")
    with open("/dev/full", "w", encoding="utf-8") as full:
        said_of_storage(run(program, job, "ground", ".", "--json", stdout=full), "a full standard output")


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).resolve()
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        full_disk(program, source, folder)
        read_only(program, source, folder)
        vanishing(program, source, folder)
        full_output(program, source, folder)
    print("\n".join(FAULTS) if FAULTS else "earlier results whole every time")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
