#!/usr/bin/env python3
"""Files lead nowhere. Usage: neighbours.py READ_FILE SOURCE

Survey files of every format name other files in every way their format has, and others lie beside them
under the names that programs look for. Each is read with those neighbours and without: the verdict is the
same word for word, nothing appears in the folder, and by strace, where it is there, nothing of the folder
is opened but the file itself, and no connection is made.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

TRACED = "open,openat,openat2,creat,connect,execve,rename,renameat,renameat2,link,symlink,unlink,unlinkat,mkdir"
GRID = "ncols 2\nnrows 2\nxllcorner 715830\nyllcorner 734697\ncellsize 2\nNODATA_value -9999\n62 63\n64 65\n"
WORLD = "7\n0\n0\n-7\n1\n2\n"
FAULTS = []


def check(holds, what):
    if not holds:
        FAULTS.append(what)


def landxml(points):
    text = points.decode()
    text = text.replace('?>\n', '?>\n<?xml-stylesheet type="text/xsl" href="other.xsl"?>\n', 1)
    inside = ('<Surfaces><Surface name="s"><SourceData><PointFiles><PointFile fileName="other.csv" '
              'fileType="csv"/></PointFiles></SourceData></Surface></Surfaces>'
              '<xi:include xmlns:xi="http://www.w3.org/2001/XInclude" href="other.xml"/>')
    return text.replace("<LandXML ", '<LandXML xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" '
                        'xsi:schemaLocation="http://www.landxml.org/schema/LandXML-1.2 other.xsd" ').replace(
                            "<CgPoints>", inside + "<CgPoints>").encode()


def drawing(points):
    block = ["0", "SECTION", "2", "BLOCKS", "0", "BLOCK", "8", "0", "2", "other", "70", "4", "1", "other.dxf",
             "0", "ENDBLK", "0", "ENDSEC", "0", "SECTION", "2", "ENTITIES"]
    return points.replace(b"0\nSECTION\n2\nENTITIES", "\n".join(block).encode())


def view_of_another(package):
    """A GeoPackage with a view and a trigger that name a database beside it."""
    import sqlite3
    with sqlite3.connect(package) as file:
        file.execute("CREATE VIEW stolen AS SELECT readfile('other.gpkg') AS data")
        file.execute("CREATE TRIGGER told AFTER INSERT ON gpkg_contents BEGIN SELECT load_extension('other.so'); END")
    file.close()


def made(source, folder):
    """{file: [neighbours]}, all of them written to the folder."""
    sys.path.insert(0, str(source / "tests" / "round_trips"))
    import survey_files
    points = survey_files.ground_points(source / "demo" / "alderbrook" / "ground.csv")[:20]
    for ending in survey_files.WRITERS:
        survey_files.write(points, folder / ("ground" + ending), "2" if ending == ".las" else "GL")
    for ending, change in ((".xml", landxml), (".dxf", drawing)):
        path = folder / ("ground" + ending)
        path.write_bytes(change(path.read_bytes()))
    text = (folder / "ground.geojson").read_text(encoding="utf-8")
    link = '{"type": "link", "properties": {"href": "other.wkt", "type": "ogcwkt"}}'
    (folder / "linked.geojson").write_text(re.sub(r'("crs": )\{[^}]*\}\}', rf"\1{link}", text), encoding="utf-8")
    view_of_another(folder / "ground.gpkg")
    (folder / "ground.asc").write_text(GRID, encoding="utf-8")
    subprocess.run(["gdal_translate", "-q", "-a_srs", "EPSG:2157", folder / "ground.asc", folder / "ground.tif"],
                   check=True)
    (folder / "virtual.tif").write_text(
        '<VRTDataset rasterXSize="2" rasterYSize="2"><VRTRasterBand dataType="Float64" band="1"><SimpleSource>'
        '<SourceFilename relativeToVRT="1">ground.tif</SourceFilename></SimpleSource></VRTRasterBand></VRTDataset>',
        encoding="utf-8")
    return sorted(folder.iterdir())


def neighbours(path):
    """Everything a program could look for beside a file, each with other contents."""
    stem, whole = path.with_suffix(""), str(path)
    beside = {f"{stem}{ending}": WORLD for ending in (".tfw", ".wld", ".prj", ".qpj", ".csvt", ".cpg", ".lax", ".wdp",
                                                      ".aux", ".hdr", ".tab", ".imd", ".dwg", ".xsl")}
    beside.update({f"{whole}{ending}": WORLD for ending in (".aux.xml", ".ovr", ".msk", ".aux", ".xml", ".gz", ".zip",
                                                            "w", "-wal", "-journal", "-shm")})
    for name in ("other.csv", "other.xml", "other.xsd", "other.xsl", "other.dxf", "other.gpkg", "other.so",
                 "other.wkt", "schema.ini", "metadata.xml"):
        beside[str(path.parent / name)] = WORLD
    if path.suffix == ".gpkg":  # with contents they are a reason to refuse it
        beside.update({f"{whole}-wal": "", f"{whole}-journal": ""})
    return {pathlib.Path(p): text for p, text in beside.items() if not pathlib.Path(p).exists()}


def verdict(reader, role, path):
    done = subprocess.run([reader, role, path.name], cwd=path.parent, capture_output=True, text=True, check=False,
                          timeout=60)
    check(done.returncode in (0, 2) and done.stderr == "", f"{path.name}: exit {done.returncode}, {done.stderr}")
    return done.stdout


def opened(reader, role, path, log):
    """What of the folder was opened and everything that was connected to; None: no strace."""
    command = ["strace", "-f", "-e", "trace=" + TRACED, "-o", str(log), reader, role, path.name]
    done = subprocess.run(command, cwd=path.parent, capture_output=True, check=False, timeout=120)
    if done.returncode not in (0, 2):
        return None
    touched = set()
    for line in log.read_text(encoding="utf-8", errors="replace").splitlines():
        call = re.search(r"(\w+)\((.*)", line)
        names = re.findall(r'"((?:[^"\\]|\\.)*)"', call[2]) if call else []
        if call and call[1] == "connect":
            touched.add("connect " + call[2])
        if call and call[1] == "execve" and names and names[0] != reader:
            touched.add("execve " + names[0])
        for name in names if call and call[1] not in ("connect", "execve") else []:
            if not name.startswith("/") or name.startswith(str(path.parent)):
                touched.add(os.path.basename(name))
    return touched


def main():
    reader, source = str(pathlib.Path(sys.argv[1]).resolve()), pathlib.Path(sys.argv[2]).resolve()
    traced = shutil.which("strace") is not None
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name, "survey")
        folder.mkdir()
        files = made(source, folder)
        plans = [(path, role) for path in files for role in ("points", "strings", "surface")]
        alone = {(path, role): verdict(reader, role, path) for path, role in plans}
        taken = {path.suffix for (path, _), said in alone.items() if said.startswith("read ")}
        check(taken == {".csv", ".xml", ".dxf", ".las", ".geojson", ".gpkg", ".asc", ".tif"}, f"taken: {sorted(taken)}")
        for path in files:
            for beside, text in neighbours(path).items():
                beside.write_text(text, encoding="utf-8")
        before = sorted(folder.iterdir())
        for path, role in plans:
            said = verdict(reader, role, path)
            check(said == alone[path, role], f"{path.name} as {role}: {said!r}, alone {alone[path, role]!r}")
            seen = opened(reader, role, path, pathlib.Path(name, "log")) if traced else None
            traced = seen is not None
            # a refusal of its kind opens nothing
            check(not traced or seen <= {path.name}, f"{path.name} as {role} touches {seen}")
        changed = {p.name for p in set(folder.iterdir()) ^ set(before)}
        check(not changed, f"reading changed the folder: {changed}")
    if not traced:
        print("skipped: no strace, so that what is opened was not seen")
    print("\n".join(FAULTS) if FAULTS else f"{len(files)} files, {len(plans)} readings, nothing else opened")
    sys.exit(1 if FAULTS else 0)


if __name__ == "__main__":
    main()
