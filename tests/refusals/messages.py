#!/usr/bin/env python3
"""Every message of refusal, in one table. Usage: messages.py SOURCE [--read]

The table is every line of tests/refusals/*/expected.txt and of the faults among
tests/commands/*/*/stderr. Each says place: found; needed; what to do, in words of the trade, in one
breath; what to do begins with a verb. --read prints the table, to be read aloud. The texts in the
source are held to the same words.
"""
import pathlib
import re
import sys

FAULT = re.compile(r"^(?P<place>[^\n]*?):(?P<line>\d+):(?P<column>\d+): (?P<said>.*)$")
QUOTED = re.compile(r'"[^"]*"')
STRING = re.compile(r'"(?:[^"\\\n]|\\.)*"')
VERBS = set("""add change check choose create close convert correct delete describe draw enter export fill get give install
    join keep leave make measure move name put quote remove rename repair run save say see separate set
    shorten split state survey take tell type use widen write""".split())
# words that belong to programs and not to a site; "bytes" only where a file's letters are at stake
JARGON = re.compile(r"\b(pars(e|er|ed|ing)|token\w*|null|NUL|exception|invalid|illegal|malformed|"
                    r"well-formed|integer|boolean|delimiter|syntax|iterator|buffer|argument|enum|"
                    r"regex|finite|dereferenc\w+|out of range|unsupported|"
                    r"unexpected|sorry|oops)\b", re.I)
# what our own arithmetic or a writer would say of a fault of the program; no input leads there
OWN_FAULTS = re.compile(r"not finite|no finite|finite (values|coordinates|numbers?)")


def parts(said):
    """Found, needed, what to do: cut at semicolons outside quotes."""
    bare = QUOTED.sub(lambda m: "\1" * len(m[0]), said)
    cuts = [m.start() for m in re.finditer("; ", bare)]
    ends = [0, *(c + 2 for c in cuts)]
    return [said[a:b] for a, b in zip(ends, [*cuts, len(said)])]


def faults_of(said):
    three = parts(said)
    if len(three) != 3 or not all(three):
        yield f"{len(three)} parts; found; needed; what to do"
        return
    own = QUOTED.sub('""', said)
    if found := JARGON.search(own):
        yield f"\"{found[0]}\" is no word of the trade"
    if three[2].split()[0].rstrip(",") not in VERBS:
        yield f"what to do begins with \"{three[2].split()[0]}\", which is not among the verbs"
    if re.search(r"  |\s$|^\s|(?<!\.\.)\.$|!| ,| ;", own):
        yield "blanks or marks that do not belong there"
    if re.match(r"[A-Z][a-z]", three[0]) and not three[0].startswith("CgPoint"):
        yield "begins with a capital"
    if len(re.sub(r"\([^()]*(\([^()]*\)[^()]*)*\)", "", said)) > 330:  # names of registers are as they are
        yield f"{len(said)} letters: longer than one breath"


def table(source):
    """Each message once, with the case that shows it."""
    rows = {}
    for path in [*sorted(source.glob("tests/refusals/*/expected.txt")),
                 *sorted(source.glob("tests/commands/*/*/stderr"))]:
        for line in path.read_text(encoding="utf-8").splitlines():
            found = FAULT.match(line)
            if found:
                rows.setdefault(found["said"], path.parent.name)
            elif path.name == "expected.txt":
                rows.setdefault(line, path.parent.name)
    return rows


def source_faults(source):
    """Texts of the program that stand in no case of the table."""
    for path in sorted(source.glob("src/*/*.cpp")):
        if path.parent.name in ("report", "geometry", "adjust"):
            continue
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if line.lstrip().startswith(("//", "#include", "static_assert", "if (has(said,")):
                continue
            for text in STRING.findall(line):
                found = JARGON.search(text)
                if found and " " in text and not OWN_FAULTS.search(text):
                    yield f"{path}:{number}: \"{found[0]}\" is no word of the trade: {text}"


def main():
    source = pathlib.Path(sys.argv[1])
    rows = table(source)
    if "--read" in sys.argv:
        print("\n".join(f"{case}\n" + "\n".join(f"    {p}" for p in parts(said))
                        for said, case in sorted(rows.items(), key=lambda r: r[1])))
    faults = [f"{case}: {said}\n    {wrong}" for said, case in rows.items() for wrong in faults_of(said)]
    faults += source_faults(source)
    print("\n".join([*faults, f"{len(rows)} messages, {len(faults)} complaints"]))
    sys.exit(1 if faults or len(rows) < 100 else 0)


if __name__ == "__main__":
    main()
