#!/usr/bin/env python3
"""British spelling of what people read. Usage: spelling.py SOURCE [--list]. Ends with 77 where hunspell
or its dictionary en_GB is missing.

Read are README.md, DEVELOPERS.md, docs, the man page, the texts in the source (messages, sheets, pages,
the job template), and the lines every refusal must get. Code, keys, file names and what stands in
quotes of code are left out. Words of the trade that the dictionary lacks are in words.txt beside this
file. --list prints the unknown words alone.
"""
import pathlib
import re
import shutil
import subprocess
import sys

STRING = re.compile(r'R"[a-z]*\((.*?)\)[a-z]*"|"((?:[^"\\\n]|\\.)*)"', re.S)
WORD = re.compile(r"(?<![\w'./-])[A-Za-z]+(?:'[a-z]+)?(?![\w-]|\.[a-z])")

MARKUP = set("atan br cx db div ed fi inf md nf src svg tabindex th toml txt xml xmlns cmake json csv".split())


def of_page(text):
    text = re.sub(r"^```.*?^```$|^    .*?$|<!--.*?-->", " ", text, flags=re.S | re.M)
    text = re.sub(r"`[^`]*`", " ", text)
    return re.sub(r"\]\([^)]*\)", "] ", text)


def of_manual(text):
    return re.sub(r"\\f.|\\|@\w+@|^\.[A-Z]+", " ", text, flags=re.M)


def of_source(text):
    """Strings that are sentences: of several words, and neither markup nor a path."""
    text = re.sub(r"^\s*(#include|//).*$", "", text, flags=re.M)
    said = [a or b for a, b in STRING.findall(text)]
    said = [re.sub(r"\\[nt\"]|<[^>]*>|&\w+;|`[^`]*`|^#?\w+ =.*$|\[[\w.]+\]", " ", s, flags=re.M)
            for s in said]
    return "\n".join(s for s in said if re.search(r"[a-z] [a-z]", s))


def of_message(text):
    return re.sub(r'"[^"]*"|\[[\w.]+\]|\b\w+(\.\w+)+|\w+ =|\w+_\w+|^\S+', " ", text, flags=re.M)


def texts(source):
    pages = [source / "README.md", source / "DEVELOPERS.md", *sorted(source.glob("docs/**/*.md"))]
    for path in pages:
        yield path, of_page(path.read_text(encoding="utf-8"))
    manual = source / "docs" / "squaredig.1.in"
    yield manual, of_manual(manual.read_text(encoding="utf-8"))
    for path in sorted(source.glob("src/*/*.cpp")):
        yield path, of_source(path.read_text(encoding="utf-8"))
    for path in sorted(source.glob("tests/refusals/*/expected.txt")):
        yield path, of_message(path.read_text(encoding="utf-8"))


def misspelt(words, own):
    """Those that neither the dictionary nor our list knows."""
    asked = subprocess.run(["hunspell", "-d", "en_GB", "-l"], input="\n".join(sorted(words)), text=True,
                           capture_output=True, check=True)
    return {w for w in asked.stdout.split() if w.removesuffix("'s").lower() not in own}


def words_of(text):
    """Whole words; abbreviations, and names of elements with capitals inside, are not ours to spell."""
    return {w.removesuffix("'s") for w in WORD.findall(text)
            if w not in MARKUP and not re.search(r"[a-z][A-Z]|^[A-Z]+s?('s)?$", w)}


def main():
    source = pathlib.Path(sys.argv[1])
    known = subprocess.run(["hunspell", "-D"], capture_output=True, text=True, stdin=subprocess.DEVNULL,
                           check=False).stderr if shutil.which("hunspell") else ""
    if "en_GB" not in known:
        print("skipped: hunspell with its dictionary en_GB is not installed, so nothing was spelt")
        sys.exit(77)
    own = set((source / "tests" / "house" / "words.txt").read_text(encoding="utf-8").lower().split())
    found = {path: words_of(text) for path, text in texts(source)}
    used = set().union(*found.values())
    bad = misspelt(used, own)
    if "--list" in sys.argv:
        print("\n".join(sorted(bad)))
        return
    faults = [f"{path.relative_to(source)}: {', '.join(sorted(words & bad))}"
              for path, words in found.items() if words & bad]
    print("\n".join([*faults, f"{len(used)} words in {len(found)} texts"]))
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
