#!/usr/bin/env python3
"""The same job done with general-purpose libraries, to measure against. Usage: script.py FOLDER dig|run

Reads FOLDER/ground.csv and breaklines.csv (as points: SciPy has no constraints), triangulates all of it in
shifted coordinates, reads the pit off FOLDER/script.json, integrates it on columns of 0.05 m, writes the
cells, a GeoTIFF and, for `run`, the whole surface as LandXML. Debian: python3-numpy python3-pandas
python3-scipy python3-pyproj python3-gdal.
"""
import json
import pathlib
import sys

import numpy
import pandas
import pyproj
from osgeo import gdal, osr
from scipy.interpolate import LinearNDInterpolator
from scipy.spatial import Delaunay

COLUMN = 0.05


def surface(folder, origin):
    points = pandas.read_csv(folder / "ground.csv", usecols=["easting", "northing", "height"])
    lines = pandas.read_csv(folder / "breaklines.csv", usecols=["easting", "northing", "height"])
    all_points = pandas.concat([points, lines]).to_numpy()
    plan = all_points[:, :2] - origin
    return Delaunay(plan), all_points[:, 2]


def cells_of(pit, triangulation, heights):
    """Cut of each column, over a rectangle that holds the crest, in the tank's own directions."""
    bearing = numpy.radians(pit["bearing"])
    ab = numpy.array([numpy.sin(bearing), numpy.cos(bearing)])
    across = numpy.array([ab[1], -ab[0]])
    reach = pit["reach"]
    u = numpy.arange(-reach, pit["length"] + reach, COLUMN) + COLUMN / 2
    v = numpy.arange(-reach, pit["width"] + reach, COLUMN) + COLUMN / 2
    uu, vv = numpy.meshgrid(u, v)
    xy = uu[..., None] * ab + vv[..., None] * across
    ground = LinearNDInterpolator(triangulation, heights)(xy)
    floor = pit["level"] + xy[..., 0] * pit["slope"][0] + xy[..., 1] * pit["slope"][1]
    outside = numpy.maximum.reduce([-pit["gap"] - uu, uu - pit["length"] - pit["gap"],
                                    -pit["gap"] - vv, vv - pit["width"] - pit["gap"], 0 * uu])
    cut = numpy.clip(ground - (floor + outside), 0, None)
    return uu, vv, cut


def write_cells(folder, uu, vv, cut):
    frame = pandas.DataFrame({"column": numpy.floor(uu).astype(int).ravel(),
                              "row": numpy.floor(vv).astype(int).ravel(),
                              "cut_m3": (cut * COLUMN**2).ravel()})
    frame.groupby(["column", "row"]).sum().to_csv(folder / "script-cells.csv")


def write_raster(folder, cut, crs):
    every = round(1 / COLUMN)
    grid = cut[every // 2::every, every // 2::every].astype("float32")
    out = gdal.GetDriverByName("GTiff").Create(str(folder / "script-cut.tif"), grid.shape[1], grid.shape[0],
                                               1, gdal.GDT_Float32)
    reference = osr.SpatialReference()
    reference.ImportFromWkt(pyproj.CRS(crs).to_wkt("WKT1_GDAL"))
    out.SetProjection(reference.ExportToWkt())
    out.GetRasterBand(1).WriteArray(grid)
    out.FlushCache()


def write_surface(folder, triangulation, heights, origin):
    with (folder / "script-ground.xml").open("w", encoding="utf-8") as out:
        out.write('<?xml version="1.0"?><LandXML xmlns="http://www.landxml.org/schema/LandXML-1.2">'
                  "<Surfaces><Surface name=\"ground\"><Definition surfType=\"TIN\"><Pnts>\n")
        for number, ((x, y), z) in enumerate(zip(triangulation.points.tolist(), heights.tolist()), 1):
            out.write(f'<P id="{number}">{y + origin[1]!r} {x + origin[0]!r} {z!r}</P>\n')
        out.write("</Pnts><Faces>\n")
        for a, b, c in (triangulation.simplices + 1).tolist():
            out.write(f"<F>{a} {b} {c}</F>\n")
        out.write("</Faces></Definition></Surface></Surfaces></LandXML>\n")


def main():
    folder, work = pathlib.Path(sys.argv[1]), sys.argv[2]
    pit = json.loads((folder / "script.json").read_text(encoding="utf-8"))
    origin = numpy.array(pit["corner_a"])
    triangulation, heights = surface(folder, origin)
    uu, vv, cut = cells_of(pit, triangulation, heights)
    print(f"{cut.sum() * COLUMN**2:.3f}")
    write_cells(folder, uu, vv, cut)
    write_raster(folder, cut, pit["crs"])
    if work == "run":
        write_surface(folder, triangulation, heights, origin)


if __name__ == "__main__":
    main()
