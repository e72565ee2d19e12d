// The whole job file of the invented Alderbrook school: every table, every key that can stand
// beside the others.
#pragma once

#include <string>

namespace squaredig::testing {

inline const std::string& alderbrook() {
  static const std::string text = R"toml([job]
name = "Alderbrook school, tank under the car park"
out = "out"
date = 2026-03-02
revision = "B"
drawing = "C-104"
prepared_by = "site survey"

[grid]
crs = "EPSG:2157"
heights = "EPSG:5731"
geoid = "geoid.tif"
plan_lengths = "ground"
scale_factor = 0.99985

[control]
points = "control.csv"

[field]
stations = ["setups.csv"]
levels = ["levels.csv"]
gnss = ["gnss.csv"]
fit = "pairs.csv"
angles = "gon"
sigma_direction_sec = 5.0
sigma_zenith_sec = 7.0
sigma_distance_mm = 2.0
sigma_distance_ppm = 1.5
two_peg = "two-peg.csv"
sigma_level_mm = 2.0
level_misclosure_mm = 12.0
refraction = 0.14
gnss_crs = "EPSG:4173"
gnss_year = 2026.2

[ground]
points = ["ground.csv", { file = "kerb.txt", columns = "point,easting,northing,height,code", units = "us-ft" }]
breaklines = ["breaklines.csv"]
outline = "outline.csv"
codes = ["GL", "TOB"]
longest_edge = 30.0
sigma_height_mm = 15.0
sigma_common_mm = 5.0

[site]
keep_out = ["boundary.csv"]
services = ["services.csv"]
clearance = 0.5
influence = "1:1"

[tank]
length = 24.0
width = 9.6
height = 1.32
corner_a = [715830.250, 734697.600]
bearing_ab = 397.5
underside_level = 62.350
fall_percent = 0.5
fall_toward = "CD"
module = [1.2, 0.6]
void_percent = 95.0
outlet_level = 63.2
empty_weight_kn = 41
[[tank.pipe]]
name = "inlet"
side = "AB"
along = 3.0
invert = 63.150
diameter_mm = 300.0
[[tank.pipe]]
name = "outlet"
side = "CD"
along = 5.0
invert = 62.600
diameter_mm = 225.0
[[tank.shaft]]
name = "access"
along_ab = 1.2
in_from_ab = 0.6
diameter_mm = 600.0
cover_level = 64.9

[bedding]
thickness_mm = 20.0
least_mm = 15.0
most_mm = 30.0

[pegs]
offset = 3.0
setback = 1.0
stations = ["CP1", "CP3"]
backsight = "CP2"
as_set = "as-set.csv"
tape = "tape.csv"
tolerance_mm = 10.0
side_tolerance_mm = 11.0
diagonal_tolerance_mm = 12.0

[dig]
gap = { AB = 0.2, BC = 0.3, CD = 0.7, DA = 0.2 }
batter = { AB = "1:1", BC = "0:1", CD = "3:2", DA = "1.5:1" }
batter_given_by = "geotechnical report 12, 2026-03-02"
corners = "round"
benches = [{ above_floor = 1.5, width = 1.0 }, { above_floor = 3.0, width = 0.5, batter = "2:1" }]
bulking = 1.25
truck_m3 = 12.0
truck_t = 20.0
loose_t_per_m3 = 1.5
keep_m3 = 40.0
strip_mm = 150.0
cell = 1.0
raster = "north"
rough_above_mm = 100.0
vertical_caution_depth = 1.5
spoil_setback = 1.2
[[dig.ramp]]
side = "CD"
along = 6.0
width = 4.0
slope = "6:1"
batter = "1:1"
[[dig.sump]]
outline = [[715835.0, 734700.0], [715836.0, 734700.0], [715836.0, 734699.0]]
level = 61.5
batter = "0:1"
[[dig.trench]]
line = [[715830.0, 734690.0, 63.1], [715820.0, 734680.0, 63.0]]
width = 0.9
wall_mm = 10.0
bedding_mm = 100.0
batter = "0:1"

[progress]
surveys = [{ name = "week 1", points = "week1.csv" }, { name = "week 2", points = "week2.csv" }]

[laser]
mark = "BM1"
staff_on_mark = 1.435
check_mark = "BM2"
staff_on_check = 1.212
check_tolerance_mm = 3.0
fall_percent = 0.5
fall_bearing = -52.5
staff_length = 5.0

[base]
points = ["as-dug.csv"]
codes = ["BASE"]
toe_codes = ["TOE"]
surveyed = "2026-03-20 14:10"
level_tolerance_mm = { high = 5.0, low = 10.0 }
mean_tolerance_mm = 5.0
flatness_tolerance_mm = 10.0
straightedge = { length = 3.0, tolerance_mm = 10.0 }
stack_gap_tolerance_mm = 5.0
fall_tolerance_percent = 0.1
extent_tolerance_mm = 50.0
spacing = 1.5
sigma_height_mm = 2.0
sigma_plan_mm = 10.0
sigma_common_mm = 1.0
confidence = 0.95
after_repair = ["after.csv"]
after_repair_surveyed = "2026-03-22 09:30"
least_repair_m2 = 0.5
tests = "compaction-base.csv"
bedding_points = ["bedding.csv"]

[fill]
side_lift_mm = 300.0
special_height = 1.5
capping = [150.0, 160.0, 170.0]
capping_beyond = 0.5
geotextile_lap_mm = 150.0
geogrid_lap_mm = 200.0
liner_lap_mm = 100.0
geogrid_layers = 3
roll = { geotextile = [6.0, 50.0], geogrid = [4.0, 51.0], liner = [6.0, 30.0] }
finish = 64.8
compacted_per_bank = 0.90
t_per_m3 = { bedding = 1.7, special = 1.8, side = 1.8, capping = 2.0 }
layers = [{ name = "cap 1", points = "cap1.csv" }]
tolerance_mm = 20.0
lift_log = "lifts.csv"
tests = "compaction.csv"
density_ratio_percent = 95.0
density_standard = "modified"
density_mean_percent = 97.0
density_characteristic_percent = 95.5
least_cover = 0.6

[water]
level = 63.0
cover_unit_weight_kn_m3 = 18.0
ratio_wanted = 1.2
)toml";
  return text;
}

// The text with the first `was` in it replaced; fails the caller's expectations if it is not there.
inline std::string with(std::string text, const std::string& was, const std::string& now) {
  const auto at = text.find(was);
  if (at == std::string::npos) return "the text to be replaced is not there: " + was;
  return text.replace(at, was.size(), now);
}

}  // namespace squaredig::testing
