#include "job/job_template.h"

namespace squaredig::job {

const std::string_view kTemplateOfLater = R"toml(
# Take the # away when the dig is surveyed on its way, in order.
#[progress]
# Needed. The surveys, each with its name and its file of points.
#surveys = [{ name = "week 1", points = "week1.csv" }]

# Take the # away when the base is dug: its verdict.
#[base]
# Needed. Files with the measured points, and the codes of those that lie on the base.
#points = ["as-dug.csv"]
#codes = ["BASE"]
# Codes of points on the surveyed toe line; without them the extent is not asked.
#toe_codes = ["TOE"]
# When it was surveyed, as text; printed.
#surveyed =
# Needed. Of every point, above and below the dig level, in millimetres, both positive:
# { high = ..., low = ... }
#level_tolerance_mm =
# Needed. Of the mean of the points, in millimetres.
#mean_tolerance_mm =
# Needed. Range about the best plane, in millimetres.
#flatness_tolerance_mm =
# Needed. Opening under a rule: { length = ..., tolerance_mm = ... }
#straightedge =
# Needed with module. Opening between neighbouring stacks, in millimetres.
#stack_gap_tolerance_mm =
# Needed. Difference of the measured fall from the planned one, in percent.
#fall_tolerance_percent =
# Needed with toe_codes. How far the surveyed toe may stand inside the gap, in millimetres.
#extent_tolerance_mm =
# Needed. Spacing of a square grid of points that would just do.
#spacing =
# Needed. Standard deviations of one measured point, in height and in plan, and the one shared by
# all (the instrument's set-up), in millimetres.
#sigma_height_mm =
#sigma_plan_mm =
#sigma_common_mm =
# Needed. One-sided probability of each decision, between 0.5 and 1.
#confidence =
# Files of a second survey, after repair.
# after_repair = ["after.csv"]
# When that was surveyed, as text; printed.
# after_repair_surveyed =
# Needed. Patches to repair that are smaller are joined or left, in square metres.
#least_repair_m2 =
# Compaction tests of the base.
# tests = "compaction-base.csv"
# Files with points on the top of the bedding as laid.
# bedding_points = ["bedding.csv"]

# Take the # away for the backfill: lifts, layers, wrap.
#[fill]
# Needed. Thickness of one lift beside the tank, in millimetres.
#side_lift_mm =
# Needed. Height of the special side fill, from the tank's underside.
#special_height =
# Needed. Thicknesses of the layers over the tank, upward from its top, in millimetres: [..., ...]
#capping =
# Needed. How far geogrid and capping reach past the footprint.
#capping_beyond =
# Needed. Laps of the sheets in millimetres, and the number of geogrid layers.
#geotextile_lap_mm =
#geogrid_lap_mm =
#liner_lap_mm =
#geogrid_layers =
# Needed. Width and length of the rolls:
# { geotextile = [..., ...], geogrid = [..., ...], liner = [..., ...] }
#roll =
# Needed. What the work is finished to: "ground", a level, or a surface file.
#finish =
# Needed. What 1 m3 in the ground becomes compacted.
#compacted_per_bank =
# Tonnes per cubic metre as placed: { bedding = ..., special = ..., side = ..., capping = ... }
#t_per_m3 =
# Surveys of layers as built, in order, and (needed with them) the tolerance of a thickness in
# millimetres.
#layers = [{ name = "cap 1", points = "cap1.csv" }]
#tolerance_mm =
# The log of lifts.
# lift_log = "lifts.csv"
# Compaction tests, and (needed with them) the least ratio asked in percent and the standard it
# refers to, "standard" or "modified".
#tests = "compaction.csv"
#density_ratio_percent =
#density_standard =
# Asked of a layer as a whole, in percent: of the mean of its tests, and of their characteristic
# value (mean less 0.92 standard deviations, of six tests or more).
#density_mean_percent =
#density_characteristic_percent =
# Least cover asked by the designer of the units.
#least_cover =

# Take the # away for the screening of uplift.
#[water]
# Needed. Highest credible groundwater.
#level =
# Needed. Unit weight of the cover, in kilonewtons per cubic metre.
#cover_unit_weight_kn_m3 =
# Needed. Ratio wanted of what holds down to what lifts.
#ratio_wanted =

# Take the # away where field books are to be reduced.
#[field]
# Total-station books, level books and GNSS positions; at least one of them.
#stations = ["setups.csv"]
#levels = ["levels.csv"]
#gnss = ["gnss.csv"]
# A two-peg test of the level.
# two_peg = "two-peg.csv"
# Pairs of points that fit the measured frame to the site grid.
# fit = "pairs.csv"
# How angles are written: "dms", "deg" or "gon".
#angles = "dms"
# Needed with stations. Standard deviations of a direction and a zenith angle in seconds, and of a
# distance: millimetres and millimetres per kilometre.
#sigma_direction_sec =
#sigma_zenith_sec =
#sigma_distance_mm =
#sigma_distance_ppm =
# Standard deviation of one kilometre levelled, and k of the permitted misclosure k sqrt(K), both in
# millimetres, K in kilometres.
#sigma_level_mm =
#level_misclosure_mm =
# Coefficient of refraction, and the reference system of latitudes and longitudes where it is not
# the grid's own.
#refraction =
#gnss_crs =
# The year of the GNSS positions, such as 2026.2: where their system drifts from the grid's.
#gnss_year =
)toml";

}  // namespace squaredig::job
