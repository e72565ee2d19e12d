#!/usr/bin/env python3
"""Builds the Debian package and looks into it. Usage: deb.py BUILD SOURCE. Ends with 77 where the
tools of the packager are missing.

The fields, the list of files, the libraries the program is linked to, the links of the documents;
then the program out of the unpacked package runs its own example, as README shows it for the demo.
"""
import gzip
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

WANTED = ("bin/squaredig", "share/man/man1/squaredig.1.gz",
          "share/bash-completion/completions/squaredig", "share/doc/squaredig/copyright",
          "share/doc/squaredig/changelog.gz", "share/doc/squaredig/first-job.md",
          "share/doc/squaredig/job-file.md", "share/doc/squaredig/LICENSE.txt",
          "share/doc/squaredig/examples/alderbrook/job.toml")
LINK = re.compile(r"\]\(([^)#\s]+)(?:#[^)]*)?\)")


def said(*command, **more):
    return subprocess.run(command, text=True, capture_output=True, check=True, **more).stdout


def package(build, folder):
    said("cpack", "--config", str(build / "CPackConfig.cmake"), "-B", str(folder))
    [deb] = folder.glob("*.deb")
    return deb


def field_faults(deb, source):
    version = re.search(r"project\(squaredig VERSION (\S+)", (source / "CMakeLists.txt").read_text())[1]
    for field, wanted in (("Package", "squaredig"), ("Version", version)):
        came = said("dpkg-deb", "--field", str(deb), field).strip()
        if came != wanted:
            yield f"{field} is {came}, wanted {wanted}"
    if not deb.name.startswith(f"squaredig_{version}_"):
        yield f"the file is called {deb.name}"


def owner_of(path):
    """The package a library comes with; Debian knows it by its folder before or after the merge."""
    bare = path.removeprefix("/usr")
    done = subprocess.run(["dpkg", "-S", bare, "/usr" + bare], text=True, capture_output=True,
                          check=False)
    return done.stdout.split(":")[0]


def library_faults(deb, program):
    """Each library the program names comes with a package that the package depends on."""
    depends = {d.split()[0] for d in said("dpkg-deb", "--field", str(deb), "Depends").split(", ")}
    needed = re.findall(r"NEEDED\s+(\S+)", said("objdump", "-p", str(program)))
    for path in re.findall(r"=> (\S+)", said("ldd", str(program))):
        if path == "not":
            yield "the program wants a library that is not there"
        name = pathlib.Path(path).name
        if name in needed:
            owner = owner_of(path)
            if owner not in depends:
                yield f"{name} comes with {owner}, which is not among {sorted(depends)}"
    for owner in ("fonts-dejavu-core", "proj-data"):
        if owner not in depends:
            yield f"{owner} is not among the packages needed"
    if "RUNPATH" in said("objdump", "-p", str(program)):
        yield "the program looks for libraries in a folder of its own"


def file_faults(usr):
    for name in WANTED:
        if not (usr / name).is_file():
            yield f"usr/{name} is missing"
    for page in (usr / "share/doc/squaredig").rglob("*.md"):
        for target in LINK.findall(page.read_text(encoding="utf-8")):
            if "://" not in target and not (page.parent / target).exists():
                yield f"{page.name}: the link {target} leads nowhere in the package"


def manual_faults(usr):
    """The manual names no place that the package does not have."""
    manual = gzip.decompress((usr / "share/man/man1/squaredig.1.gz").read_bytes()).decode()
    named = re.findall(r"/usr/[\w/.-]+", manual)
    yield from (f"the manual names {n}, which is not in the package" for n in named
                if not (usr.parent / n[1:]).exists())
    if not named:
        yield "the manual does not say where the documents are"


def demo_faults(usr, source, folder):
    shown = re.search(r"\$ demo/run\n(.*?)done, and", (source / "README.md").read_text(), re.S)[1]
    job = folder / "alderbrook"
    shutil.copytree(usr / "share/doc/squaredig/examples/alderbrook", job)
    done = subprocess.run([usr / "bin/squaredig", "run", job, "--quiet"], text=True,
                          capture_output=True, check=False)
    if done.returncode != 1 or not done.stdout.startswith(shown) or done.stderr:
        yield f"the example ends with {done.returncode} and says {done.stdout}{done.stderr}"


def main():
    build, source = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()
    for tool in ("dpkg-deb", "dpkg-shlibdeps", "objdump", "ldd"):
        if not shutil.which(tool):
            print(f"skipped: {tool} is not installed, so no package is built here")
            sys.exit(77)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        deb = package(build, folder / "made")
        said("dpkg-deb", "--extract", str(deb), str(folder / "root"))
        usr = folder / "root" / "usr"
        faults = [*field_faults(deb, source), *file_faults(usr), *manual_faults(usr)]
        if (usr / "bin/squaredig").is_file():
            faults += [*library_faults(deb, usr / "bin/squaredig"), *demo_faults(usr, source, folder)]
    print("\n".join(faults) if faults else f"{deb.name}: nothing to say")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
