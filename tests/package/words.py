#!/usr/bin/env python3
"""The man page and the completion know what the program knows. Usage: words.py PROGRAM SOURCE BUILD.

Every command and option of `squaredig --help` and of each command's own help stands in the man page,
and the completion offers exactly them; the man page and the completion name no other.
"""
import pathlib
import re
import shutil
import subprocess
import sys

OPTION = re.compile(r"(?<![\w-])--[a-z]+")


def help_of(program, *command):
    return subprocess.run([program, *command, "--help"], text=True, capture_output=True,
                          check=True).stdout


def commands_of(text):
    return re.findall(r"^  ([a-z]+) ", text.split("Subcommands:")[1].split("\n\n")[0], re.M)


def plain(man):
    return re.sub(r"\\f.", "", man.replace("\\-", "-"))


def man_faults(man, commands, options):
    named = set(re.findall(r'^\.BI ([a-z]+) " (?:DIR|JOB)"$', man, re.M))
    for word in sorted(named ^ set(commands)):
        yield f"command {word}: not in both the man page and the help"
    for word in sorted(set(OPTION.findall(plain(man))) ^ options):
        yield f"option {word}: not in both the man page and the help"


def sentences_differ(man, text):
    """Each command is explained in the same words in both."""
    flat = re.sub(r"\s+", " ", re.sub(r"^\.I\w* ?", "", plain(man), flags=re.M))
    for name, words in re.findall(r"^  ([a-z]+) {3,}(\S.*)$", text.split("Subcommands:")[1], re.M):
        if words.split(" in DIR")[0] not in flat:
            yield f"{name}: the man page does not say \"{words}\""


def groff_faults(page):
    if not shutil.which("groff"):
        print("groff is not installed: the man page is not set here")
        return
    done = subprocess.run(["groff", "-man", "-ww", "-z", page], capture_output=True, text=True,
                          check=False)
    yield from (line for line in done.stderr.splitlines() if line)


def offered(script, *words):
    """What the completion offers for the last word."""
    line = " ".join(f"'{w}'" for w in words)
    ask = (f"source {script}; complete -p squaredig >/dev/null || exit 1; COMP_WORDS=({line}); "
           f"COMP_CWORD={len(words) - 1}; _squaredig; printf '%s\\n' \"${{COMPREPLY[@]}}\"")
    done = subprocess.run(["bash", "-c", ask], capture_output=True, text=True, check=True)
    return {w for w in done.stdout.split() if w}


def completion_faults(script, program, commands):
    first = set(commands) | set(OPTION.findall(help_of(program)))
    if offered(script, "squaredig", "") != first:
        yield f"first word: offers {offered(script, 'squaredig', '')}, wanted {first}"
    for command in commands:
        wanted = set(OPTION.findall(help_of(program, command)))
        if offered(script, "squaredig", command, "-") != wanted:
            yield f"{command}: offers {offered(script, 'squaredig', command, '-')}, wanted {wanted}"
    if offered(script, "squaredig", "di") != {"dig"}:
        yield "di is not completed to dig"
    if offered(script, "squaredig", "dig", "--progress", "") != {"auto", "never"}:
        yield "--progress: offers other words than auto and never"


def job_faults(script, source):
    """A job is completed to folders and to job files, and to nothing else."""
    job = f"{source}/demo/alderbrook/"
    if offered(script, "squaredig", "dig", job) != {job + "job.toml"}:
        yield f"in the demo's folder: offers {offered(script, 'squaredig', 'dig', job)}"
    if offered(script, "squaredig", "dig", job[:-3]) != {job[:-1]}:
        yield "the demo's folder is not completed"


def main():
    program, source, build = (pathlib.Path(a).resolve() for a in sys.argv[1:4])
    text = help_of(program)
    commands = commands_of(text)
    options = set(OPTION.findall(text))
    for command in commands:
        options |= set(OPTION.findall(help_of(program, command)))
    page = build / "made" / "install" / "squaredig.1"
    man = page.read_text(encoding="utf-8")
    script = source / "src" / "cmake" / "squaredig.bash"
    faults = [*man_faults(man, commands, options), *sentences_differ(man, text), *groff_faults(page),
              *completion_faults(script, program, commands), *job_faults(script, source)]
    print("\n".join(faults) if faults else f"{len(commands)} commands, {len(options)} options")
    sys.exit(1 if faults or not commands else 0)


if __name__ == "__main__":
    main()
