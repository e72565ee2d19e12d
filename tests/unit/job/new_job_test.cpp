// The commented job file: what is left for the user is named by check; filled in, it is read.
#include "job/new_job.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <sstream>

#include "job/job.h"

namespace squaredig::job {
namespace {

// Values for the keys the template leaves empty, by table.
const std::map<std::string, std::string>& values() {
  static const std::map<std::string, std::string> all = {
      {"job.name", "\"Alderbrook\""},
      {"job.date", "2026-03-02"},
      {"job.revision", "\"A\""},
      {"job.drawing", "\"C-104\""},
      {"job.prepared_by", "\"site survey\""},
      {"grid.crs", "\"EPSG:2157\""},
      {"grid.heights", "\"EPSG:5731\""},
      {"ground.longest_edge", "30"},
      {"ground.sigma_height_mm", "15"},
      {"ground.sigma_common_mm", "5"},
      {"site.clearance", "0.5"},
      {"site.influence", "\"1:1\""},
      {"tank.length", "24"},
      {"tank.width", "9.6"},
      {"tank.height", "1.32"},
      {"tank.corner_a", "[715830.25, 734697.6]"},
      {"tank.bearing_ab", "37.5"},
      {"tank.underside_level", "62.35"},
      {"tank.fall_percent", "0.5"},
      {"tank.fall_bearing", "127.5"},
      {"tank.module", "[1.2, 0.6]"},
      {"tank.void_percent", "95"},
      {"tank.outlet_level", "63.2"},
      {"tank.empty_weight_kn", "0"},
      {"bedding.thickness_mm", "20"},
      {"bedding.least_mm", "15"},
      {"bedding.most_mm", "30"},
      {"pegs.offset", "3"},
      {"pegs.setback", "1"},
      {"pegs.tolerance_mm", "10"},
      {"pegs.side_tolerance_mm", "10"},
      {"pegs.diagonal_tolerance_mm", "10"},
      {"dig.gap", "0.2"},
      {"dig.batter", "\"1:1\""},
      {"dig.batter_given_by", "\"geotechnical report 12\""},
      {"dig.bulking", "1.25"},
      {"dig.truck_m3", "12"},
      {"dig.truck_t", "20"},
      {"dig.loose_t_per_m3", "1.5"},
      {"dig.keep_m3", "0"},
      {"dig.strip_mm", "150"},
      {"dig.raster", "\"north\""},
      {"dig.rough_above_mm", "100"},
      {"dig.vertical_caution_depth", "1.5"},
      {"dig.spoil_setback", "1"},
      {"laser.plane_level", "64.105"},
      {"laser.fall_percent", "0"},
      {"laser.fall_bearing", "0"},
      {"laser.staff_length", "5"},
      {"base.surveyed", "\"2026-03-20 14:10\""},
      {"base.level_tolerance_mm", "{ high = 5, low = 10 }"},
      {"base.mean_tolerance_mm", "5"},
      {"base.flatness_tolerance_mm", "10"},
      {"base.straightedge", "{ length = 3, tolerance_mm = 10 }"},
      {"base.stack_gap_tolerance_mm", "5"},
      {"base.fall_tolerance_percent", "0.1"},
      {"base.extent_tolerance_mm", "50"},
      {"base.spacing", "1.5"},
      {"base.sigma_height_mm", "2"},
      {"base.sigma_plan_mm", "10"},
      {"base.sigma_common_mm", "2"},
      {"base.confidence", "0.95"},
      {"base.least_repair_m2", "0.5"},
      {"fill.side_lift_mm", "300"},
      {"fill.special_height", "1.5"},
      {"fill.capping", "[150, 150, 150]"},
      {"fill.capping_beyond", "0.5"},
      {"fill.geotextile_lap_mm", "150"},
      {"fill.geogrid_lap_mm", "200"},
      {"fill.liner_lap_mm", "100"},
      {"fill.geogrid_layers", "3"},
      {"fill.roll", "{ geotextile = [6, 50], geogrid = [4, 50], liner = [6, 30] }"},
      {"fill.finish", "\"ground\""},
      {"fill.compacted_per_bank", "0.9"},
      {"fill.t_per_m3", "{ bedding = 1.7, special = 1.8, side = 1.8, capping = 2 }"},
      {"fill.tolerance_mm", "20"},
      {"fill.density_ratio_percent", "95"},
      {"fill.density_standard", "\"standard\""},
      {"fill.density_mean_percent", "97"},
      {"fill.density_characteristic_percent", "95"},
      {"fill.least_cover", "0.6"},
      {"water.level", "63"},
      {"water.cover_unit_weight_kn_m3", "18"},
      {"water.ratio_wanted", "1.2"},
      {"field.sigma_direction_sec", "5"},
      {"field.sigma_zenith_sec", "5"},
      {"field.sigma_distance_mm", "2"},
      {"field.sigma_distance_ppm", "2"},
      {"field.sigma_level_mm", "2"},
      {"field.level_misclosure_mm", "12"},
      {"field.refraction", "0.13"},
      {"field.gnss_crs", "\"EPSG:4173\""},
      {"field.gnss_year", "2026.2"},
  };
  return all;
}

std::string template_text() { return new_job_files().at(0).text; }

bool left_out(const std::string& line) {
  return line.size() > 1 && line[0] == '#' && line[1] != ' ';
}

// The template with the # taken off: where `wanted` says so for "table.key" or "[table]".
template <class Wanted>
std::string filled(Wanted wanted) {
  std::istringstream lines(template_text());
  std::string text, table, line;
  bool table_taken = true;
  while (std::getline(lines, line)) {
    const bool out = left_out(line);
    const std::string bare = out ? line.substr(1) : line;
    if (bare[0] == '[') {
      table = bare.substr(1, bare.find(']') - 1);
      table_taken = !out || wanted("[" + table + "]");
    }
    const std::string key = table + "." + bare.substr(0, bare.find(' '));
    const bool take = out && table_taken && (bare[0] == '[' || wanted(key));
    text += take ? bare : line;
    if (take && bare.back() == '=') text += " " + values().at(key);
    text += "\n";
  }
  return text;
}

std::vector<Problem> faults_of(const std::string& text) {
  try {
    read_job(text, "job.toml");
    return {};
  } catch (const Refusal& refusal) {
    return refusal.problems();
  }
}

const std::set<std::string>& needed_at_first() {
  static const std::set<std::string> keys = {"job.name",
                                             "grid.crs",
                                             "grid.heights",
                                             "ground.longest_edge",
                                             "ground.sigma_height_mm",
                                             "ground.sigma_common_mm",
                                             "tank.length",
                                             "tank.width",
                                             "tank.height",
                                             "tank.corner_a",
                                             "tank.bearing_ab",
                                             "tank.underside_level",
                                             "tank.fall_percent",
                                             "bedding.thickness_mm",
                                             "bedding.least_mm",
                                             "bedding.most_mm",
                                             "pegs.offset",
                                             "pegs.setback",
                                             "pegs.tolerance_mm",
                                             "pegs.side_tolerance_mm",
                                             "pegs.diagonal_tolerance_mm",
                                             "dig.gap",
                                             "dig.batter",
                                             "dig.vertical_caution_depth"};
  return keys;
}

TEST(NewJob, NamesEachValueThatIsLeftToTheUser_new_job_1) {
  std::set<std::string> named;
  for (const Problem& fault : faults_of(template_text())) {
    // "[tank] without length"
    const auto close = fault.found.find(']');
    named.insert(fault.found.substr(1, close - 1) + "." + fault.found.substr(close + 10));
  }
  EXPECT_EQ(named, needed_at_first());
}

TEST(NewJob, PassesOnceTheNeededValuesAreFilledIn) {
  auto wanted = needed_at_first();
  wanted.insert("tank.fall_bearing");  // as there is fall
  const std::string text = filled([&](const std::string& key) { return wanted.contains(key); });
  for (const Problem& fault : faults_of(text)) ADD_FAILURE() << fault.text();
  const Job job = read_job(text, "job.toml");
  for (const Stage stage : {Stage::Ground, Stage::Pegs, Stage::Dig})
    EXPECT_TRUE(missing_for(stage, job).empty()) << words(stage);
  EXPECT_EQ(missing_for(Stage::Base, job).size(), 1U);
}

TEST(NewJob, PassesWithEveryTableTakenAndFilledIn) {
  const std::string text = filled([](const std::string&) { return true; });
  for (const Problem& fault : faults_of(text)) ADD_FAILURE() << fault.text();
  const Job job = read_job(text, "job.toml");
  for (const Stage stage : kStages) EXPECT_TRUE(missing_for(stage, job).empty()) << words(stage);
  EXPECT_TRUE(job.site && job.laser && job.water);
  EXPECT_EQ(job.progress.size(), 1U);
}

TEST(NewJob, NamesOnlyFieldBooksItWrites) {
  const auto files = new_job_files();
  auto wanted = needed_at_first();
  wanted.insert({"tank.fall_bearing", "[control]", "control.points", "ground.breaklines"});
  const Job job =
      read_job(filled([&](const std::string& key) { return wanted.contains(key); }), "job.toml");
  const auto written = [&](const std::string& path) {
    return std::any_of(files.begin(), files.end(), [&](const auto& f) { return f.path == path; });
  };
  EXPECT_TRUE(written(job.control->points.path));
  EXPECT_TRUE(written(job.ground->points.at(0).path));
  EXPECT_TRUE(written(job.ground->breaklines.at(0).path));
  for (const char* path : {"as-set.csv", "tape.csv", "as-dug.csv"})
    EXPECT_TRUE(written(path)) << path;
}

TEST(NewJob, FieldBooksHaveACommentAndAHeader) {
  for (const NewFile& file : new_job_files()) {
    if (file.path == "job.toml") continue;
    std::istringstream lines(file.text);
    std::string comment, header, more;
    std::getline(lines, comment);
    std::getline(lines, header);
    EXPECT_EQ(comment.substr(0, 2), "# ") << file.path;
    EXPECT_NE(header.find(','), std::string::npos) << file.path;
    EXPECT_FALSE(std::getline(lines, more)) << file.path << " has no rows";
  }
}

TEST(NewJob, EveryKeyStandsBelowASentence) {
  std::istringstream lines(template_text());
  bool explained = false;
  int keys = 0;
  for (std::string line; std::getline(lines, line);) {
    const std::string bare = left_out(line) ? line.substr(1) : line;
    if (line.starts_with("# ")) {
      explained = true;
    } else if (bare.empty() || bare[0] == '[') {
      explained = false;
    } else {
      ++keys;
      EXPECT_TRUE(explained) << line;
    }
  }
  EXPECT_GT(keys, 100);
}

TEST(NewJob, NoLineIsWiderThanAScreen) {
  std::istringstream lines(template_text());
  for (std::string line; std::getline(lines, line);) EXPECT_LE(line.size(), 100U) << line;
}

}  // namespace
}  // namespace squaredig::job
