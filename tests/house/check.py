#!/usr/bin/env python3
"""The house rules that a script can see. Usage: check.py RULE SOURCE_FOLDER; `all` runs every rule.

Each rule gives the faults it finds, one line each; a clean house gives none.
"""
import collections
import pathlib
import re
import subprocess
import sys

COMPUTING_ROOMS = ("geometry", "adjust", "geodesy", "ground", "design", "field", "pegs", "dig", "base",
                   "fill", "record")
TYPED_ROOMS = ("ground", "design", "pegs", "dig", "base")
TOP_LEVEL = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "src", "tests", "fixtures", "demo",
             "docs"}
LONGEST_FILE, LONGEST_FUNCTION = 400, 60
LAW_TAG = re.compile(r"(?<![\w.])([a-z][a-z_]*\.\d+)(?![\w.]*\d)")
TEST_NAME = re.compile(r"\b(?:TEST|TEST_F|TEST_P)\(\s*\w+,\s*(\w+)\s*\)")
STRING = re.compile(r'"(?:[^"\\\n]|\\.)*"')
RAW_STRING = re.compile(r'R"(\w*)\(.*?\)\1"', re.S)


def tracked(source, *patterns):
    """Files of the project: what git knows, and what is new and not ignored."""
    run = subprocess.run(["git", "-C", source, "ls-files", "-z", "--cached", "--others",
                          "--exclude-standard", "--", *patterns],
                         capture_output=True, text=True, check=True)
    paths = (source / name for name in sorted(set(run.stdout.split("\0"))) if name)
    return [p for p in paths if p.is_file()]


def public_headers(source, rooms):
    return [p for room in rooms for p in tracked(source, f"src/{room}/*.h")
            if not p.name.endswith("_internal.h")]


def text(path):
    return path.read_text(encoding="utf-8", errors="replace")


def head_comment(path):
    return text(path).split("#pragma once")[0]


def code_of(path):
    """The file without comments and strings."""
    return re.sub(r"//[^\n]*", "", STRING.sub('""', text(path)))


# what a head comment says, in this order, and what it must say at the least, by room
PARTS = ("Frame and units", "Requires", "Laws", "Accuracy", "Errors", "Source")
CONTRACT = {**dict.fromkeys(COMPUTING_ROOMS, ("Frame and units", "Laws", "Accuracy", "Errors", "Source")),
            "quantity": ("Accuracy", "Errors", "Source"),
            **dict.fromkeys(("formats", "job"), ("Errors", "Source"))}


def contracts(source):
    """A header says what it is; one that declares functions of the trade is a whole contract."""
    for path in tracked(source, "src/*.h"):
        if not path.name.endswith(".h.in") and not head_comment(path).startswith("// "):
            yield f"{path}: begins without saying what it is"
    for room, wanted in CONTRACT.items():
        for path in public_headers(source, [room]):
            said = re.findall(rf"(?:^// |\. )({'|'.join(PARTS)})\b[^:\n]*:", head_comment(path), re.M)
            if path.stem.endswith(("_input", "_result", "_types")):
                continue  # values alone
            for part in wanted:
                if part not in said:
                    yield f"{path}: the head comment has no \"{part}:\""
            if said != sorted(said, key=PARTS.index):
                yield f"{path}: the head comment says {', '.join(said)}; the order is {', '.join(PARTS)}"


def law_tags(path):
    """The numbered laws of a header, from the part of its head comment that follows "Laws"."""
    comment = re.sub(r"\n//", "\n", head_comment(path))
    for part in re.findall(r"\bLaws\b(.*?)(?=\b(?:Accuracy|Errors|Source|Requires)\b[^\n]*:|\Z)",
                           comment, re.S):
        yield from LAW_TAG.findall(part)


def laws(source):
    """Every numbered law of a header stands in exactly one test name."""
    names = [name for path in tracked(source, "tests/*.cpp")
             for name in TEST_NAME.findall(text(path))]
    owners = {}
    for path in tracked(source, "src/*.h"):
        for tag in law_tags(path):
            owners.setdefault(tag, []).append(path)
    for tag, paths in sorted(owners.items()):
        if len(paths) > 1:
            yield f"{tag}: stated in {len(paths)} headers: {', '.join(p.name for p in paths)}"
        ending = "_" + tag.replace(".", "_")
        longer = [t for t in owners if t != tag and t.endswith("_" + tag)]
        count = sum(name.endswith(ending) and not any(
            name.endswith("_" + t.replace(".", "_")) for t in longer) for name in names)
        if count != 1:
            yield f"{paths[0]}: law {tag} stands in {count} test names; one is wanted"


def doubles(source):
    """Quantities are said in types: no plain double in these rooms' public headers."""
    for path in public_headers(source, TYPED_ROOMS):
        for number, line in enumerate(code_of(path).splitlines(), 1):
            if re.search(r"\b(double|float)\b", line):
                yield f"{path}:{number}: a plain number: {line.strip()}"


def one_voice(source):
    """The standard streams and the catch of refusals are each in one file of the program."""
    for word, most in (("std::cerr", 1), ("std::cout", 1), (r"catch \(const Refusal", 1),
                       (r"printf\(", 0), ("std::exit", 0)):
        files = [p for p in tracked(source, "src/*.cpp", "src/*.h")
                 if re.search(word, code_of(p))]
        if len(files) > most:
            yield f"{word}: in {', '.join(str(f.relative_to(source)) for f in files)}"


def one_definition(source):
    """A type's name stands for one type in its room: two would be one to the linker."""
    known = {}
    for path in tracked(source, "src/*.cpp", "src/*.h"):
        anonymous, depth = None, 0
        for line in code_of(path).splitlines():
            if anonymous is None and re.match(r"\s*namespace \{", line):
                anonymous = depth
            found = re.match(r"(?:struct|class|enum class) (\w+)[^;]*$", line)
            if found and anonymous is None:
                room = path.relative_to(source).parts[1]
                first = known.setdefault((room, found[1]), path)
                if first != path and first.suffix == path.suffix == ".h":
                    yield f"{path}: {found[1]} is defined in {first} too"
            depth += line.count("{") - line.count("}")
            if anonymous is not None and depth <= anonymous:
                anonymous = None


def words(source):
    """What no sheet may say, and what no finished file says."""
    banned = re.compile(r"\b(safe|safely|compliant|stable|approved)\b", re.I)
    unfinished = re.compile(r"\b(TO" r"DO|FIX" r"ME|X" r"XX|not imple" r"mented|place" r"holder)\b")
    for path in tracked(source, "src/*.cpp", "src/*.h", "demo/*", "src/*.toml", "docs/*.md"):
        for number, line in enumerate(text(path).splitlines(), 1):
            said = STRING.findall(line) if path.suffix in (".cpp", ".h") else [line]
            if any(banned.search(s) for s in said) and path.suffix != ".md":
                yield f"{path}:{number}: {line.strip()}"
    for path in tracked(source, "src", "tests", "demo", "README.md", "DEVELOPERS.md"):
        for number, line in enumerate(text(path).splitlines(), 1):
            if unfinished.search(line):
                yield f"{path}:{number}: unfinished by its own words: {line.strip()}"


def lengths(source):
    """No file of code is longer than a person reads in one go."""
    for path in tracked(source, "src/*.cpp", "src/*.h", "tests/*.cpp", "tests/*.h", "tests/*.py",
                        "demo/*.py"):
        count = text(path).count("\n")
        if count > LONGEST_FILE:
            yield f"{path}: {count} lines; {LONGEST_FILE} at most"


def functions(source):
    """No function is longer than a person keeps in mind; a table of few statements may be.

    By the house's format: a brace alone in its line closes what the last line of no more indent began.
    """
    for path in tracked(source, "src/*.cpp", "src/*.h", "tests/*.cpp", "tests/*.h"):
        lines = RAW_STRING.sub(lambda m: "\n" * m[0].count("\n"), text(path)).split("\n")
        began = {0: 0, 2: 0}
        for number, line in enumerate(lines):
            indent = len(line) - len(line.lstrip())
            if not line or indent not in began:
                continue
            body = lines[began[indent] + 1:number]
            if line.strip() == "}" and len(body) > LONGEST_FUNCTION and sum(l.endswith(";") for l in body) > 3:
                yield f"{path}:{began[indent] + 1}: a function of {len(body)} lines; {LONGEST_FUNCTION} at most"
            began[indent] = number


def top_level(source):
    """The top level holds what the house allows and dot files."""
    seen = {p.relative_to(source).parts[0] for p in tracked(source)}
    for name in sorted(seen - TOP_LEVEL):
        if not name.startswith("."):
            yield f"{name}: does not belong at the top level"


def links(source):
    """Every relative link of the documents leads to a file."""
    for path in tracked(source, "*.md"):
        for target in re.findall(r"\]\(([^)#\s]+)(?:#[^)]*)?\)", text(path)):
            if "://" in target or target.startswith("mailto:"):
                continue
            if not (path.parent / target).exists():
                yield f"{path}: the link {target} leads nowhere"


def pages(source):
    """Documents read well as plain text: no long lines but in tables and code; decisions have four parts."""
    for path in [source / "README.md", source / "DEVELOPERS.md", *tracked(source, "docs/*.md")]:
        bare = re.sub(r"^```.*?^```$", lambda m: "\n" * m[0].count("\n"), text(path), flags=re.S | re.M)
        for number, line in enumerate(bare.splitlines(), 1):
            if len(line) > 120 and not line.startswith(("|", "    ")):
                yield f"{path}:{number}: {len(line)} letters in a line; 120 at most"
        if path.parent.name == "decisions":
            for part in ("Context", "Options", "Choice", "Consequence"):
                if f"**{part}.**" not in text(path):
                    yield f"{path}: no **{part}.**"


DECLARED = re.compile(
    r"(?:\s{0,4}(?:\[\[nodiscard\]\] |static |virtual |constexpr |inline |explicit |friend )*"
    r"(?!return|throw|else|case|using|delete)[A-Za-z][\w:<>,&* ]*[ &*])(?:\w+::)*([a-z]\w*)\(")


# the verifier of surfaces is shipped for whoever makes one, and tells in words what the program refuses;
# angles can be printed in gon, drawings as PNG; the compass rule is what textbooks close a traverse by,
# where the program adjusts a net
FOR_TESTS = {"verify", "gon_text", "png", "closed_traverse"}


def unused(source):
    """Every function that a header declares is used by the program, not by its tests alone."""
    uses, told = collections.Counter(), {}
    for path in tracked(source, "src/*.h", "src/*.cpp"):
        for line in code_of(path).splitlines():
            names = re.findall(r"\b[a-z]\w*\b", line)
            declares = DECLARED.match(line)
            if declares and (path.suffix == ".h" or not line.startswith(" ")):
                names.remove(declares[1])
                if path.suffix == ".h":
                    told.setdefault(declares[1], path)
            uses.update(names)
    for name, path in sorted(told.items()):
        if not uses[name] and name not in FOR_TESTS:
            yield f"{path}: {name} is used by nothing"


# one word for one thing: what the glossary says, and what else it might be called
OTHER_WORDS = (("base", r"formation|subgrade|blinding"), ("mark", r"bench ?marks?"),
               ("peg", r"stakes?|hubs?"), ("cross-fall", r"cross fall|crossfall"),
               ("level or height", r"(?<!easting and )elevations?(?! (factor|and combined))"),
               ("crest", r"shoulder"), ("batter", r"side ?slopes?|embankment"),
               ("gap", r"working space|overdig"), ("set-up", r"setup(?!s?`)"))


def one_word(source):
    """Documents, sheets, pages and the job template call a thing by its word of the glossary."""
    rows = re.findall(r"^\| ([^|]+) \|", text(source / "docs" / "glossary.md"), re.M)[2:]
    for word, after in zip(rows, rows[1:]):
        if word.lower() >= after.lower():
            yield f"docs/glossary.md: {after} stands behind {word}, or twice"
    for path in tracked(source, "README.md", "docs/*.md", "src/*/*.cpp"):
        template = path.name.startswith("template")
        for number, line in enumerate(text(path).splitlines(), 1):
            said = [line] if path.suffix == ".md" or template else STRING.findall(line)
            for own, others in OTHER_WORDS:
                found = re.search(rf"(?<![\w`.])\b({others})\b", " ".join(s for s in said if " " in s),
                                  re.I)
                if found and not line.lstrip().startswith(("#include", "//")):
                    yield f"{path}:{number}: \"{found[1]}\" where the glossary says {own}: {line.strip()}"


def chain(source):
    """One word finds all of a stage: the same chain of files for each."""
    made = text(source / "src" / "CMakeLists.txt")
    results, keys = text(source / "docs" / "results.md"), text(source / "docs" / "job-file.md")
    for stage in re.search(r"set\(stages ([^)]*)\)", made)[1].replace("design", "").split():
        for path in (f"src/{stage}/{stage}_input.h", f"src/{stage}/{stage}_result.h",
                     f"src/formats/{stage}_json.h", f"src/formats/{stage}_json.cpp",
                     f"docs/{stage}.md", f"tests/commands/{stage}", f"tests/tables/{stage}.table",
                     f"tests/tables/{stage}_table.cpp"):
            if not (source / path).exists():
                yield f"{stage}: {path} is missing"
        if not tracked(source, f"tests/unit/{stage}/*_test.cpp", f"tests/laws/{stage}_*test.cpp"):
            yield f"{stage}: neither tests/unit/{stage} nor tests/laws/{stage} has a test"
        if f"\n## {stage}.json" not in results:
            yield f"{stage}: docs/results.md has no section {stage}.json"
        if stage != "record" and f"\n## {stage}\n" not in keys:
            yield f"{stage}: docs/job-file.md has no section {stage}"
        page = source / "docs" / f"{stage}.md"
        if page.exists() and not re.search(r"^#+ .*[Ee]xample", text(page), re.M):
            yield f"{stage}: docs/{stage}.md has no worked example"


RULES = {f.__name__: f for f in (contracts, laws, doubles, one_voice, one_definition, words, lengths,
                                 functions, top_level, links, pages, unused, one_word, chain)}


def main():
    rule, source = sys.argv[1], pathlib.Path(sys.argv[2]).resolve()
    chosen = RULES.values() if rule == "all" else [RULES[rule]]
    faults = [fault for check in chosen for fault in check(source)]
    print("\n".join(faults) if faults else f"{rule}: nothing to say")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
