#include "job/job_template.h"

namespace squaredig::job {

const std::string_view kTemplateOfDesign =
    R"toml(# Job file of squaredig. Metres, unless a key's name ends in its unit (_mm, _m3, _percent, ...).
# Lines that begin with "# " explain. Lines that begin with "#key" are keys you may or must give:
# take the # away and write the value behind the =. Nothing is assumed for a key that is needed:
# "squaredig check ." names each one that is still missing.

[job]
# Needed. The name printed on every sheet.
#name =
# Needed. The folder for the results, below this one.
out = "out"
# Date of the sheets, as 2026-03-02. Without it, files that need a date carry 1970-01-01.
#date =
# Printed where given, each as text: revision, drawing number, who prepared the job.
#revision =
#drawing =
#prepared_by =

[grid]
# Needed. Reference system of every easting and northing, as "EPSG:2157", or "local".
#crs =
# Needed. Reference system of every height, as "EPSG:5731", or "local".
#heights =
# Are the lengths in this file "grid" lengths or "ground" lengths? Ground lengths are scaled by the
# combined factor grid / ground.
plan_lengths = "grid"
# Only with "ground": the factor. Without it, it is computed from crs and height.
# scale_factor = ...
# A grid file with the geoid's separation, for heights measured by GNSS.
# geoid = "geoid.tif"

# Take the # away where a control point is named below.
#[control]
# Needed. File with the control points: point, easting, northing, height.
#points = "control.csv"

[ground]
# Needed. Files with the points of the existing ground: .csv .xml (LandXML) .las .dxf .geojson .gpkg
# .tif .asc. A CSV file without a header line is given as
# { file = "g.csv", columns = "point,easting,northing,height,code", units = "m" }, one layer of a
# drawing or GeoPackage as { file = "g.gpkg", layer = "ground" }.
points = ["ground.csv"]
# Files with strings whose segments become edges: kerbs, tops and toes of slopes.
#breaklines = ["breaklines.csv"]
# A file with the closed edge of the survey.
# outline = "outline.csv"
# Take only points with these codes: of a drawing its layers, of a laser scan its classes ("2").
# codes = ["GL", "TOB"]
# Instead of points: a ready triangulated surface, LandXML or DXF. One of several in a LandXML
# document is given as { file = "ground.xml", name = "existing" }.
# surface = "ground.xml"
# Needed. A triangle at the rim of the survey with a longer side than this is not ground.
#longest_edge =
# Needed. Standard deviation of the height of one ground point, in millimetres.
#sigma_height_mm =
# Needed. Standard deviation shared by all of them (datum transfer), in millimetres.
#sigma_common_mm =

# Take the # away where it applies: what stands around the work.
#[site]
# Files with strings the dig must keep clear of: boundaries, walls.
#keep_out = ["boundary.csv"]
# Files with strings, each vertex with its level: buried services known to you.
#services = ["services.csv"]
# Needed with services. Wanted between a service and the excavated surface.
#clearance =
# Line of influence drawn from the toe upward, run per rise as "1:1". For loads ask the engineer.
#influence =

[tank]
# Needed. Length of side A-B and of side B-C, and the height from underside to top.
# Corners run A, B, C, D clockwise as seen from above.
#length =
#width =
#height =
# Needed. Corner A as [easting, northing], or the name of a control point in quotes.
#corner_a =
# Needed. Direction from A to B, in decimal degrees clockwise from grid north.
#bearing_ab =
# Or, instead of bearing_ab, corner B as a control point; its distance is checked.
# corner_b = "CP2"
# Or, instead of corner_a and its direction, a place from a line of two control points; the angle
# turns A-B clockwise from that line:
# from = { line = ["CP1", "CP2"], along = 12.5, right = 6.0, angle = 0.0 }
# Or, instead of length, width and place, any simple polygon A, B, C, ... or a strings file:
# outline = [[e, n], [e, n], [e, n], ...]
# Needed. Level of the underside of the tank, which is the top of the bedding, at corner A.
#underside_level =
# Needed. Fall of the underside, drop per run in percent; 0 for level.
#fall_percent =
# Needed where there is fall: the bearing of downhill, or the side it falls toward as "CD".
#fall_bearing =
# fall_toward = "CD"
# Plan size of one unit, first along A-B; without it no gap between stacks is told.
#module =
# Voids of the tank in percent; without it the storage is gross.
#void_percent =
# Level of the outlet, for the storage table.
#outlet_level =
# Weight of the empty tank in kilonewtons, for the screening of uplift.
#empty_weight_kn =
# A pipe through the wall, as often as there are pipes. `along` runs from the side's first corner;
# the pipe's point is its centre line at the outer face.
# [[tank.pipe]]
# name = "inlet"
# side = "AB"
# along = ...
# invert = ...
# diameter_mm = ...
# An access shaft, as often as there are shafts.
# [[tank.shaft]]
# name = "access"
# along_ab = ...
# in_from_ab = ...
# diameter_mm = ...
# cover_level = ...

[bedding]
# Needed. Thickness under the tank, and the least and most that are accepted, in millimetres.
#thickness_mm =
#least_mm =
#most_mm =

[pegs]
# Needed. Wanted distance of a reference peg beyond its tank corner.
#offset =
# Needed. Least clear distance of a peg beyond the crest, which is the top of the batter.
#setback =
# Control points to set up on, and the one to sight back to, for bearings and distances.
# stations = ["CP1"]
# backsight = "CP2"
# Measured pegs to be checked against design, matched by name.
# as_set = "as-set.csv"
# Taped sides and diagonals.
# tape = "tape.csv"
# Needed. Tolerances in millimetres: position of a corner re-made from the string lines, each side,
# each diagonal and the difference of the two.
#tolerance_mm =
#side_tolerance_mm =
#diagonal_tolerance_mm =

[dig]
# Needed. From the tank's face to the toe, level; for all sides, or { AB = ..., BC = ..., CD = ...,
# DA = ... }.
#gap =
# Needed. Batter, run per rise as text: "1.5:1" is 1.5 across for each 1 up, "0:1" is vertical; for
# all sides, or one for each as above. It is the designer's to give.
#batter =
# Who gave the batter, and when; printed. Without it the sheets say that nobody did.
#batter_given_by =
# How batters meet at a corner: "mitre" or "round".
corners = "mitre"
# Benches, from the lowest up; the batter goes on above, or the bench's own.
# benches = [{ above_floor = ..., width = ... }]
# What 1 m3 in the ground becomes loose; without it no loose volume is told.
#bulking =
# What one truck takes, loose, in cubic metres.
#truck_m3 =
# What one truck may carry, in tonnes, and (needed with it) what the loose soil weighs, in tonnes
# per cubic metre: the loads are those by volume or by mass, whichever are more.
#truck_t =
#loose_t_per_m3 =
# Of the cut, kept on site, in cubic metres in the ground.
#keep_m3 =
# Topsoil taken first, in millimetres; its volume is told apart.
#strip_mm =
# Needed. Grid cell of the dig sheet, along and across the tank.
cell = 1.0
# How cut.tif lies: "tank", along and across it, or "north", north up.
#raster = "tank"
# A first stop, this much above the dig level, in millimetres.
#rough_above_mm =
# Needed. A vertical face deeper than this is overprinted on every sheet.
#vertical_caution_depth =
# Distance of spoil from the edge, drawn.
#spoil_setback =
# An access ramp, level across; it starts at the toe at floor level.
# [[dig.ramp]]
# side = "CD"
# along = ...
# width = ...
# slope = "6:1"
# batter = "..."
# A sump.
# [[dig.sump]]
# outline = [[e, n], [e, n], [e, n], ...]
# level = ...
# batter = "..."
# A pipe trench; its floor is the invert less wall and bedding.
# [[dig.trench]]
# line = [[e, n, invert], [e, n, invert], ...]
# width = ...
# wall_mm = ...
# bedding_mm = ...
# batter = "..."

# Take the # away where it applies: the plane of the laser, for the staff readings.
#[laser]
# Needed. Level of the plane at corner A.
#plane_level =
# Or, instead, read from a mark and proved on a second one, both control points:
# mark = "BM1"
# staff_on_mark = ...
# check_mark = "BM2"
# staff_on_check = ...
# check_tolerance_mm = ...
# Needed. Fall of the plane in percent, 0 for level, and with fall the bearing of its downhill.
#fall_percent =
#fall_bearing =
# Needed. Length of the staff; readings beyond it are told.
#staff_length =
)toml";

}  // namespace squaredig::job
