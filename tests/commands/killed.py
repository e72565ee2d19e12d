#!/usr/bin/env python3
"""Ends the program at random moments, as `kill -9` and as Ctrl-C do. Usage: killed.py PROGRAM SOURCE

Whatever the moment and the signal, the output folder holds the files of whole runs alone: those of the first job or
those of the second, never a mixture within a stage, never half a file; and the next run leaves nothing
beside it. The program ends by the signal itself, as a shell expects, or had ended with exit status 0 or 1.
"""
import pathlib
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

SEED = 20260320
ROUNDS = 300  # of them 200 kills
SIGNALS = (signal.SIGKILL, signal.SIGKILL, signal.SIGINT)
WHOLE_RUNS = 5  # every so many rounds the whole run is killed, else the dig


def files(folder):
    return {p.name: p.read_bytes() for p in sorted(folder.iterdir())}


def whole_run(program, folder):
    done = subprocess.run([program, "run", ".", "--quiet"], cwd=folder, check=False,
                          stdout=subprocess.DEVNULL)
    if done.returncode not in (0, 1):
        raise SystemExit(f"exit {done.returncode}")
    return files(folder / "out")


def as_from_a_terminal():
    """A shell's background job ignores Ctrl-C, and its children would with it."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def main():
    program, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2])
    rng = random.Random(SEED)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name, "job")
        shutil.copytree(source / "demo" / "alderbrook", folder,
                        ignore=shutil.ignore_patterns("out"))
        job = folder / "job.toml"
        texts = [job.read_text(), job.read_text().replace("truck_m3 = 12.0", "truck_m3 = 9.0")]
        outcomes, start = [], time.monotonic()
        for text in texts:
            job.write_text(text)
            outcomes.append(whole_run(program, folder))
        seconds = (time.monotonic() - start) / 2
        start = time.monotonic()
        subprocess.run([program, "dig", ".", "--quiet"], cwd=folder, check=False,
                       stdout=subprocess.DEVNULL)
        dig_seconds = time.monotonic() - start
        seen, ended = set(), set()
        for number in range(ROUNDS):
            job.write_text(texts[number % 2])
            whole = number % WHOLE_RUNS == 0
            child = subprocess.Popen([program, "run" if whole else "dig", ".", "--quiet"],
                                     cwd=folder, stdout=subprocess.DEVNULL,
                                     preexec_fn=as_from_a_terminal)
            time.sleep(rng.uniform(0, 1.1 * (seconds if whole else dig_seconds)))
            sent = SIGNALS[number // 2 % 3]
            child.send_signal(sent)
            status = child.wait()
            ended.add((sent, status))
            if status not in (0, 1, -sent):
                raise SystemExit(f"round {number}, seed {SEED}: {sent.name} ended it with {status}")
            now = files(folder / "out")
            by_stage = {}
            for file, text in now.items():
                stage = "dig" if file.split(".")[0] in ("cells", "cut") else \
                    "base" if file.startswith("repair") else file.split(".")[0].split("-")[0]
                match = {i for i, o in enumerate(outcomes) if o.get(file) == text}
                by_stage[stage] = by_stage.get(stage, {0, 1}) & match
            if set(now) != set(outcomes[0]) or not all(by_stage.values()):
                raise SystemExit(f"round {number}, seed {SEED}: {by_stage}, {sorted(now)}")
            seen.add(tuple(sorted(by_stage["dig"])))
        whole_run(program, folder)
        left = [p.name for p in folder.iterdir() if "squaredig" in p.name]
        if left or len(seen) < 2 or not {(s, -s) for s in SIGNALS} <= ended:
            raise SystemExit(f"left behind: {left}; seen {seen}, {ended}, seed {SEED}")
    print(f"{ROUNDS} ends by signals 9 and 2, whole results every time")


if __name__ == "__main__":
    main()
