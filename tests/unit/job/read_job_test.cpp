// The whole job file: every table present, every value where it belongs.
#include <gtest/gtest.h>

#include "job/job.h"
#include "unit/job/alderbrook.h"

namespace squaredig::job {
namespace {

using testing::alderbrook;
using testing::with;

const Job& whole() {
  static const Job job = read_job(alderbrook(), "job.toml");
  return job;
}

TEST(ReadJob, HasEveryTable) {
  const Job& job = whole();
  EXPECT_TRUE(job.grid && job.control && job.field && job.ground && job.site && job.tank);
  EXPECT_TRUE(job.bedding && job.pegs && job.dig && job.laser && job.base && job.fill && job.water);
  EXPECT_EQ(job.progress.size(), 2U);
  for (const Stage stage : kStages) EXPECT_TRUE(missing_for(stage, job).empty()) << words(stage);
  EXPECT_TRUE(job.assumed.empty());
  EXPECT_TRUE(job.cautions.empty());
}

TEST(ReadJob, ReadsJobAndGrid) {
  const Job& job = whole();
  EXPECT_EQ(job.job.name, "Alderbrook school, tank under the car park");
  EXPECT_EQ(job.job.out, "out");
  using namespace std::chrono_literals;
  EXPECT_EQ(job.job.date, 2026y / 3 / 2);
  EXPECT_EQ(job.job.revision, "B");
  EXPECT_EQ(job.job.drawing, "C-104");
  EXPECT_EQ(job.job.prepared_by, "site survey");
  EXPECT_EQ(job.grid->crs, 2157);
  EXPECT_EQ(job.grid->heights, 5731);
  EXPECT_EQ(job.grid->geoid->path, "geoid.tif");
  EXPECT_EQ(job.grid->plan_lengths, design::PlanLengths::Ground);
  EXPECT_EQ(job.grid->scale_factor->value(), 0.99985);
  EXPECT_EQ(job.control->points.path, "control.csv");
  EXPECT_EQ(job.control->points.place, (Place{"job.toml", 17, 10}));
}

TEST(ReadJob, ReadsFieldGroundAndSite) {
  const Job& job = whole();
  EXPECT_EQ(job.field->stations.at(0).path, "setups.csv");
  EXPECT_EQ(job.field->levels.at(0).path, "levels.csv");
  EXPECT_EQ(job.field->gnss.at(0).path, "gnss.csv");
  EXPECT_EQ(job.field->fit->path, "pairs.csv");
  EXPECT_EQ(job.field->settings.angles, AngleNotation::Gon);
  EXPECT_EQ(job.field->settings.sigma_direction, Angle::seconds(5));
  EXPECT_EQ(job.field->settings.sigma_zenith, Angle::seconds(7));
  EXPECT_EQ(job.field->settings.sigma_distance, Length::millimetres(2));
  EXPECT_EQ(job.field->settings.sigma_distance_per_length->value(), 1.5e-6);
  ASSERT_EQ(job.ground->points.size(), 2U);
  EXPECT_FALSE(job.ground->points[0].columns);
  EXPECT_EQ(job.ground->points[1].path, "kerb.txt");
  EXPECT_EQ(job.ground->points[1].columns, "point,easting,northing,height,code");
  EXPECT_EQ(job.ground->points[1].units, FileUnits::UsSurveyFeet);
  EXPECT_EQ(job.ground->breaklines.at(0).path, "breaklines.csv");
  EXPECT_EQ(job.ground->outline->path, "outline.csv");
  EXPECT_EQ(job.ground->codes, (std::vector<std::string>{"GL", "TOB"}));
  EXPECT_EQ(job.ground->settings.longest_edge, Length::metres(30));
  EXPECT_EQ(job.ground->settings.sigma_height, Length::millimetres(15));
  EXPECT_EQ(job.ground->settings.sigma_common, Length::millimetres(5));
  EXPECT_EQ(job.site->keep_out.at(0).path, "boundary.csv");
  EXPECT_EQ(job.site->services.at(0).path, "services.csv");
  EXPECT_EQ(job.site->settings.clearance, Length::metres(0.5));
  EXPECT_EQ(job.site->settings.influence, Batter::run_per_rise(1));
}

TEST(ReadJob, ReadsTankAndBedding) {
  const auto& tank = whole().tank->settings;
  EXPECT_EQ(tank.length, Length::metres(24));
  EXPECT_EQ(tank.width, Length::metres(9.6));
  EXPECT_EQ(tank.height, Length::metres(1.32));
  EXPECT_EQ(std::get<GridPoint>(*tank.corner_a), grid_point(715830.25, 734697.6));
  EXPECT_EQ(tank.bearing_ab->in_degrees(), 37.5) << "a full turn is taken off";
  EXPECT_EQ(tank.underside_level, Elevation::metres(62.35));
  EXPECT_EQ(tank.fall, Fall::percent(0.5));
  EXPECT_EQ(tank.fall_toward, "CD");
  EXPECT_EQ(tank.module->second, Length::metres(0.6));
  EXPECT_EQ(tank.voids, Ratio::percent(95));
  EXPECT_EQ(tank.outlet_level, Elevation::metres(63.2));
  EXPECT_EQ(tank.empty_weight, Force::kilonewtons(41));
  ASSERT_EQ(tank.pipes.size(), 2U);
  EXPECT_EQ(tank.pipes[1].name, "outlet");
  EXPECT_EQ(tank.pipes[1].side, "CD");
  EXPECT_EQ(tank.pipes[1].along, Length::metres(5));
  EXPECT_EQ(tank.pipes[1].invert, Elevation::metres(62.6));
  EXPECT_EQ(tank.pipes[1].diameter, Length::millimetres(225));
  EXPECT_EQ(tank.shafts.at(0).in_from_ab, Length::metres(0.6));
  EXPECT_EQ(tank.shafts.at(0).cover_level, Elevation::metres(64.9));
  const auto& bedding = *whole().bedding;
  EXPECT_EQ(bedding.thickness, Length::millimetres(20));
  EXPECT_EQ(bedding.least, Length::millimetres(15));
  EXPECT_EQ(bedding.most, Length::millimetres(30));
}

TEST(ReadJob, ReadsPegsAndLaser) {
  const auto& pegs = *whole().pegs;
  EXPECT_EQ(pegs.settings.offset, Length::metres(3));
  EXPECT_EQ(pegs.settings.setback, Length::metres(1));
  EXPECT_EQ(pegs.settings.stations, (std::vector<std::string>{"CP1", "CP3"}));
  EXPECT_EQ(pegs.settings.backsight, "CP2");
  EXPECT_EQ(pegs.as_set->path, "as-set.csv");
  EXPECT_EQ(pegs.tape->path, "tape.csv");
  EXPECT_EQ(pegs.settings.tolerance, Length::millimetres(10));
  EXPECT_EQ(pegs.settings.side_tolerance, Length::millimetres(11));
  EXPECT_EQ(pegs.settings.diagonal_tolerance, Length::millimetres(12));
  const auto& laser = *whole().laser;
  EXPECT_FALSE(laser.plane_level);
  EXPECT_EQ(laser.mark->mark, "BM1");
  EXPECT_EQ(laser.mark->check_mark, "BM2");
  EXPECT_EQ(laser.mark->staff_on_mark, Length::metres(1.435));
  EXPECT_EQ(laser.mark->staff_on_check, Length::metres(1.212));
  EXPECT_EQ(laser.mark->check_tolerance, Length::millimetres(3));
  EXPECT_EQ(laser.fall, Fall::percent(0.5));
  EXPECT_EQ(laser.fall_bearing.in_degrees(), 307.5);
  EXPECT_EQ(laser.staff_length, Length::metres(5));
}

TEST(ReadJob, ReadsTheShapeOfThePit) {
  const auto& pit = whole().dig->pit;
  EXPECT_FALSE(pit.gap.all);
  ASSERT_EQ(pit.gap.by_side.size(), 4U);
  EXPECT_EQ(pit.gap.by_side[2], (std::pair<std::string, Length>("CD", Length::metres(0.7))));
  EXPECT_EQ(pit.batter.by_side.at(2).second, Batter::run_per_rise(1.5)) << "3:2 is 1.5:1";
  EXPECT_TRUE(pit.batter.by_side.at(1).second.vertical());
  EXPECT_EQ(pit.batter_given_by, "geotechnical report 12, 2026-03-02");
  EXPECT_EQ(pit.corners, design::Corners::Round);
  ASSERT_EQ(pit.benches.size(), 2U);
  EXPECT_FALSE(pit.benches[0].batter);
  EXPECT_EQ(pit.benches[1].above_floor, Length::metres(3));
  EXPECT_EQ(pit.benches[1].width, Length::metres(0.5));
  EXPECT_EQ(pit.benches[1].batter, Batter::run_per_rise(2));
  EXPECT_EQ(pit.ramps.at(0).side, "CD");
  EXPECT_EQ(pit.ramps.at(0).along, Length::metres(6));
  EXPECT_EQ(pit.ramps.at(0).width, Length::metres(4));
  EXPECT_EQ(pit.ramps.at(0).slope, Batter::run_per_rise(6));
  EXPECT_EQ(pit.ramps.at(0).batter, Batter::run_per_rise(1));
  EXPECT_EQ(pit.sumps.at(0).outline.size(), 3U);
  EXPECT_EQ(pit.sumps.at(0).level, Elevation::metres(61.5));
  EXPECT_EQ(pit.trenches.at(0).line.at(1), grid_position(715820, 734680, 63));
  EXPECT_EQ(pit.trenches.at(0).width, Length::metres(0.9));
  EXPECT_EQ(pit.trenches.at(0).wall, Length::millimetres(10));
  EXPECT_EQ(pit.trenches.at(0).bedding, Length::millimetres(100));
  EXPECT_EQ(pit.vertical_caution_depth, Length::metres(1.5));
}

TEST(ReadJob, ReadsTheRestOfTheDig) {
  const auto& dig = whole().dig->settings;
  EXPECT_EQ(dig.bulking, Ratio::of(1.25));
  EXPECT_EQ(dig.truck_mass->load, Mass::tonnes(20));
  EXPECT_EQ(dig.truck_mass->loose, Density::tonnes_per_cubic_metre(1.5));
  EXPECT_EQ(dig.truck, LooseVolume::cubic_metres(12));
  EXPECT_EQ(dig.keep, BankVolume::cubic_metres(40));
  EXPECT_EQ(dig.strip, Length::millimetres(150));
  EXPECT_EQ(dig.cell, Length::metres(1));
  EXPECT_EQ(dig.rough_above, Length::millimetres(100));
  EXPECT_EQ(dig.spoil_setback, Length::metres(1.2));
  EXPECT_EQ(dig.raster, dig::RasterFrame::North);
  EXPECT_EQ(whole().progress.at(1).name, "week 2");
  EXPECT_EQ(whole().progress.at(1).points.path, "week2.csv");
}

TEST(ReadJob, ReadsBase) {
  const auto& base = *whole().base;
  const auto& s = base.settings;
  EXPECT_EQ(base.points.at(0).path, "as-dug.csv");
  EXPECT_EQ(base.after_repair.at(0).path, "after.csv");
  EXPECT_EQ(s.after_repair_surveyed, "2026-03-22 09:30");
  EXPECT_EQ(base.tests->path, "compaction-base.csv");
  EXPECT_EQ(base.bedding_points.at(0).path, "bedding.csv");
  EXPECT_EQ(s.codes, std::vector<std::string>{"BASE"});
  EXPECT_EQ(s.toe_codes, std::vector<std::string>{"TOE"});
  EXPECT_EQ(s.surveyed, "2026-03-20 14:10");
  EXPECT_EQ(s.level_tolerance, (Tolerance{Length::millimetres(5), Length::millimetres(10)}));
  EXPECT_EQ(s.mean_tolerance, Length::millimetres(5));
  EXPECT_EQ(s.flatness_tolerance, Length::millimetres(10));
  EXPECT_EQ(s.straightedge->length, Length::metres(3));
  EXPECT_EQ(s.straightedge->tolerance, Length::millimetres(10));
  EXPECT_EQ(s.stack_gap_tolerance, Length::millimetres(5));
  EXPECT_EQ(s.fall_tolerance, Fall::percent(0.1));
  EXPECT_EQ(s.extent_tolerance, Length::millimetres(50));
  EXPECT_EQ(s.spacing, Length::metres(1.5));
  EXPECT_EQ(s.sigma_height, Length::millimetres(2));
  EXPECT_EQ(s.sigma_plan, Length::millimetres(10));
  EXPECT_EQ(s.sigma_common, Length::millimetres(1));
  EXPECT_EQ(s.confidence, Ratio::of(0.95));
  EXPECT_EQ(s.least_repair, Area::square_metres(0.5));
  EXPECT_EQ(s.density_ratio, Ratio::percent(95)) << "from [fill]";
}

TEST(ReadJob, ReadsFillAndWater) {
  const auto& fill = *whole().fill;
  const auto& s = fill.settings;
  EXPECT_EQ(s.side_lift, Length::millimetres(300));
  EXPECT_EQ(s.special_height, Length::metres(1.5));
  EXPECT_EQ(s.capping.at(2), Length::millimetres(170));
  EXPECT_EQ(s.capping_beyond, Length::metres(0.5));
  EXPECT_EQ(s.geotextile_lap, Length::millimetres(150));
  EXPECT_EQ(s.geogrid_lap, Length::millimetres(200));
  EXPECT_EQ(s.liner_lap, Length::millimetres(100));
  EXPECT_EQ(s.geogrid_layers, 3);
  EXPECT_EQ(s.geogrid->width, Length::metres(4));
  EXPECT_EQ(s.geogrid->length, Length::metres(51));
  EXPECT_EQ(std::get<Elevation>(s.finish), Elevation::metres(64.8));
  EXPECT_EQ(s.compacted_per_bank, Ratio::of(0.9));
  EXPECT_EQ(s.placed_density->capping, Density::tonnes_per_cubic_metre(2));
  EXPECT_EQ(fill.layers.at(0).name, "cap 1");
  EXPECT_EQ(s.layer_tolerance, Length::millimetres(20));
  EXPECT_EQ(fill.lift_log->path, "lifts.csv");
  EXPECT_EQ(fill.tests->path, "compaction.csv");
  EXPECT_EQ(s.density_ratio, Ratio::percent(95));
  EXPECT_EQ(s.density_standard, fill::DensityStandard::Modified);
  EXPECT_EQ(s.density_mean, Ratio::percent(97));
  EXPECT_EQ(s.density_characteristic, Ratio::percent(95.5));
  EXPECT_EQ(s.least_cover, Length::metres(0.6));
  EXPECT_EQ(whole().water->level, Elevation::metres(63));
  EXPECT_EQ(whole().water->cover_unit_weight, UnitWeight::kilonewtons_per_cubic_metre(18));
  EXPECT_EQ(whole().water->ratio_wanted, Ratio::of(1.2));
}

TEST(ReadJob, ReadsTheOtherWaysToPlaceATank) {
  const std::string where = "corner_a = [715830.250, 734697.600]\nbearing_ab = 397.5\n";
  const auto to_corner =
      read_job(with(alderbrook(), where, "corner_a = \"CP1\"\ncorner_b = \"CP2\"\n"), "job.toml");
  EXPECT_EQ(std::get<std::string>(*to_corner.tank->settings.corner_a), "CP1");
  EXPECT_EQ(to_corner.tank->settings.corner_b, "CP2");
  const auto from = read_job(
      with(alderbrook(), where,
           "from = { line = [\"CP1\", \"CP2\"], along = 12.5, right = -6.0, angle = 30 }\n"),
      "job.toml");
  EXPECT_EQ(from.tank->settings.from->line_to, "CP2");
  EXPECT_EQ(from.tank->settings.from->right, Length::metres(-6));
  EXPECT_EQ(from.tank->settings.from->turn, Angle::degrees(30));
}

TEST(ReadJob, NamesTheSidesOfAnOutlineByItsCorners) {
  const std::string placed =
      "length = 24.0\nwidth = 9.6\nheight = 1.32\n"
      "corner_a = [715830.250, 734697.600]\nbearing_ab = 397.5\n";
  const std::string five = "height = 1.32\noutline = [[0,0],[0,10],[10,10],[10,5],[5,0]]\n";
  auto text = with(alderbrook(), placed, five);
  text = with(text, "fall_toward = \"CD\"", "fall_toward = \"EA\"");
  text = with(text, "CD = 0.7, DA = 0.2 }", "CD = 0.7, DE = 0.2, EA = 0.2 }");
  text = with(text, "CD = \"3:2\", DA = \"1.5:1\" }", "CD = \"3:2\", DE = \"1:1\", EA = \"1:1\" }");
  const auto job = read_job(text, "job.toml");
  EXPECT_EQ(job.tank->settings.outline.size(), 5U);
  EXPECT_EQ(job.dig->pit.gap.by_side.size(), 5U);
  auto in_file =
      with(text, "outline = [[0,0],[0,10],[10,10],[10,5],[5,0]]\n", "outline = \"tank.csv\"\n");
  EXPECT_EQ(read_job(in_file, "job.toml").tank->settings.outline_file, "tank.csv");
}

TEST(ReadJob, ReadsTheThreeKindsOfFinish) {
  const auto existing = read_job(with(alderbrook(), "finish = 64.8", "finish = \"ground\""), "j");
  EXPECT_TRUE(std::holds_alternative<fill::ExistingGround>(existing.fill->settings.finish));
  EXPECT_FALSE(existing.fill->finish);
  const auto file = read_job(with(alderbrook(), "finish = 64.8", "finish = \"top.xml\""), "j");
  EXPECT_EQ(file.fill->finish->path, "top.xml");
}

TEST(ReadJob, ReadsALaserByItsPlane) {
  const auto text = with(alderbrook(),
                         "mark = \"BM1\"\nstaff_on_mark = 1.435\ncheck_mark = \"BM2\"\n"
                         "staff_on_check = 1.212\ncheck_tolerance_mm = 3.0\n",
                         "plane_level = 64.105\n");
  const auto laser = *read_job(text, "job.toml").laser;
  EXPECT_EQ(laser.plane_level, Elevation::metres(64.105));
  EXPECT_FALSE(laser.mark);
}

TEST(ReadJob, TellsWhatItAssumes) {
  const auto job =
      read_job("[job]\nname='a'\nout='o'\n[grid]\ncrs='local'\nheights='local'\n", "j");
  ASSERT_EQ(job.assumed.size(), 2U);
  EXPECT_EQ(job.assumed[0], "date: 1970-01-01 in files that need one, as [job] gives none");
  EXPECT_EQ(job.assumed[1].substr(0, 22), "plan_lengths: \"grid\", ");
  EXPECT_EQ(job.cautions.size(), 2U);
}

TEST(ReadJob, SameTextSameJob_job_3) {
  const auto again = read_job(alderbrook(), "job.toml");
  EXPECT_EQ(again.places, whole().places);
  EXPECT_EQ(again.tank->settings.underside_level, whole().tank->settings.underside_level);
}

TEST(ReadJob, KnowsThePlaceOfEachKey) {
  EXPECT_EQ(whole().place_of("job.name"), (Place{"job.toml", 2, 8}));
  EXPECT_EQ(whole().place_of("tank.pipe[2].side").line, whole().place_of("tank.pipe[2]").line + 2);
  EXPECT_EQ(whole().place_of("tank.corner_b"), whole().place_of("tank")) << "the table above it";
  EXPECT_EQ(whole().place_of("nothing.here"), (Place{"job.toml", 1, 1}));
}

TEST(ReadJob, ReadsByteOrderMarkAndCarriageReturns) {
  std::string text = "\xEF\xBB\xBF";
  for (const char c : alderbrook()) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
  EXPECT_EQ(read_job(text, "job.toml").tank->settings.height, Length::metres(1.32));
}

TEST(MissingFor, NamesTheTablesOfTheStage) {
  const auto job =
      read_job("[job]\nname='a'\nout='o'\n[grid]\ncrs='local'\nheights='local'\n", "j");
  const auto tables = [&](Stage stage) {
    std::string found;
    for (const Problem& p : missing_for(stage, job)) found += p.found.substr(9);
    return found;
  };
  EXPECT_EQ(tables(Stage::Field), "[field]");
  EXPECT_EQ(tables(Stage::Ground), "[ground]");
  EXPECT_EQ(tables(Stage::Pegs), "[ground][tank][bedding][pegs][dig]");
  EXPECT_EQ(tables(Stage::Dig), tables(Stage::Pegs));
  EXPECT_EQ(tables(Stage::Base), "[ground][tank][bedding][pegs][dig][base]");
  EXPECT_EQ(tables(Stage::Fill), "[ground][tank][bedding][pegs][dig][fill]");
  EXPECT_EQ(missing_for(Stage::Ground, job)[0].text(),
            "j:1:1: no table [ground]; [ground] for the ground stage; add [ground] and its keys");
}

}  // namespace
}  // namespace squaredig::job
