// Every key of the job file, one at a time: left out, and given what it cannot be.
#include <gtest/gtest.h>

#include <fstream>
#include <random>
#include <set>
#include <sstream>

#include "job/job.h"
#include "unit/job/alderbrook.h"

namespace squaredig::job {
namespace {

using testing::alderbrook;

struct KeyLine {
  std::string table;  // "tank", "tank.pipe"
  std::string key;
  int line = 0;
};

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<KeyLine> key_lines() {
  std::vector<KeyLine> keys;
  std::string table;
  const auto lines = lines_of(alderbrook());
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (const auto at = lines[i].find(" = "); at != std::string::npos)
      keys.push_back({table, lines[i].substr(0, at), static_cast<int>(i) + 1});
    else if (!lines[i].empty())
      table = lines[i].substr(lines[i].find_last_of('[') + 1,
                              lines[i].find(']') - lines[i].find_last_of('[') - 1);
  }
  return keys;
}

// The whole job with one line replaced.
std::string with_line(int number, const std::string& now) {
  std::string text;
  const auto lines = lines_of(alderbrook());
  for (std::size_t i = 0; i < lines.size(); ++i)
    text += (static_cast<int>(i) + 1 == number ? now : lines[i]) + "\n";
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

// Keys that may be left out of the whole job without any fault.
const std::set<std::string> kOptional = {"job.date",
                                         "job.revision",
                                         "job.drawing",
                                         "job.prepared_by",
                                         "grid.geoid",
                                         "grid.scale_factor",
                                         "field.stations",
                                         "field.levels",
                                         "field.gnss",
                                         "field.fit",
                                         "field.angles",
                                         "field.two_peg",
                                         "field.sigma_level_mm",
                                         "field.level_misclosure_mm",
                                         "field.refraction",
                                         "field.gnss_crs",
                                         "field.gnss_year",
                                         "ground.breaklines",
                                         "ground.outline",
                                         "ground.codes",
                                         "site.keep_out",
                                         "site.services",
                                         "site.influence",
                                         "tank.module",
                                         "tank.void_percent",
                                         "tank.outlet_level",
                                         "tank.empty_weight_kn",
                                         "pegs.backsight",
                                         "pegs.as_set",
                                         "pegs.tape",
                                         "dig.batter_given_by",
                                         "dig.corners",
                                         "dig.benches",
                                         "dig.bulking",
                                         "dig.truck_m3",
                                         "dig.keep_m3",
                                         "dig.strip_mm",
                                         "dig.raster",
                                         "dig.rough_above_mm",
                                         "dig.spoil_setback",
                                         "base.toe_codes",
                                         "base.surveyed",
                                         "base.after_repair_surveyed",
                                         "base.tests",
                                         "base.bedding_points",
                                         "fill.t_per_m3",
                                         "fill.layers",
                                         "fill.lift_log",
                                         "fill.tests",
                                         "fill.density_mean_percent",
                                         "fill.density_characteristic_percent",
                                         "fill.least_cover"};

// Keys without which what another says has no sense.
const std::set<std::string> kOthersLeanOn = {"grid.plan_lengths", "pegs.stations",
                                             "base.after_repair", "dig.truck_t", "control.points"};

TEST(EveryKey, IsNamedWhenItIsLeftOutAndNeeded) {
  std::size_t needed = 0;
  for (const KeyLine& key : key_lines()) {
    const std::string name = key.table + "." + key.key;
    const auto faults = faults_of(with_line(key.line, ""));
    if (kOptional.contains(name)) {
      for (const auto& fault : faults) ADD_FAILURE() << name << ": " << fault.text();
      continue;
    }
    ASSERT_FALSE(faults.empty()) << name;
    if (kOthersLeanOn.contains(name)) continue;
    ++needed;
    EXPECT_EQ(faults.size(), 1U) << name;
    const std::string asked = name == "tank.fall_toward" ? "fall_bearing" : key.key;
    const std::string& found = faults[0].found;
    EXPECT_EQ(found.substr(found.find_last_of(' ') + 1), asked) << found;
  }
  EXPECT_GT(needed, 90U);
}

TEST(EveryKey, RefusesWhatItCannotBe_job_1) {
  // An empty list or table is a list or table like any other for these.
  const std::set<std::string> may_be_empty = {"dig.benches", "progress.surveys", "fill.capping",
                                              "fill.layers", "fill.roll",        "fill.t_per_m3"};
  for (const KeyLine& key : key_lines()) {
    const std::string name = key.table + "." + key.key;
    for (const char* value : {"nan", "-inf", "1e30", "true", "\"a\\tb\"", "[]", "{}", "[[]]",
                              "{ a = 1 }", "2026-03-02T10:00:00Z", "10:00:00", "\"\""}) {
      const bool empty = std::string(value) == "[]" || std::string(value) == "{}";
      if (empty && may_be_empty.contains(name)) continue;
      const auto faults = faults_of(with_line(key.line, key.key + " = " + value));
      ASSERT_FALSE(faults.empty()) << name << " = " << value;
      for (const auto& fault : faults) {
        EXPECT_EQ(fault.place.file, "job.toml");
        EXPECT_FALSE(fault.found.empty() || fault.needed.empty() || fault.remedy.empty());
      }
    }
  }
}

TEST(EveryKey, StandsInTheDocument) {
  std::ifstream in(std::string(SQUAREDIG_SOURCE) + "/docs/job-file.md");
  std::stringstream text;
  text << in.rdbuf();
  const std::string document = text.str();
  for (const KeyLine& key : key_lines()) {
    const auto section = document.find("\n## " + key.table + "\n");
    ASSERT_NE(section, std::string::npos) << key.table;
    const auto end = document.find("\n## ", section + 1);
    EXPECT_NE(document.substr(section, end - section).find("| `" + key.key + "` |"),
              std::string::npos)
        << key.table << "." << key.key;
  }
}

// Bytes changed, cut out and doubled at random: a job is read or refused, never anything else.
TEST(EveryKey, NoDamageToTheTextDoesMoreThanRefuse) {
  constexpr unsigned kSeed = 20260302;
  std::mt19937 random(kSeed);
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random()) % n; };
  for (int round = 0; round < 1500; ++round) {
    std::string text = alderbrook();
    for (std::size_t edits = 1 + below(4); edits > 0; --edits) {
      const std::size_t at = below(text.size());
      const std::size_t length = std::min(text.size() - at, 1 + below(40));
      switch (below(4)) {
        case 0:
          text[at] = static_cast<char>(below(256));
          break;
        case 1:
          text.erase(at, length);
          break;
        case 2:
          text.insert(at, text.substr(at, length));
          break;
        default:
          text[at] = "[]{}\"'=.,#\n-0"[below(13)];
      }
    }
    for (const Problem& fault : faults_of(text)) {
      ASSERT_GE(fault.place.line, 1) << "seed " << kSeed << " round " << round;
      ASSERT_EQ(fault.text().find('\n'), std::string::npos) << "seed " << kSeed;
    }
  }
}

TEST(EveryKey, EndlessNestingIsRefusedAtOnce) {
  for (const char* opening : {"[", "{a=", "[{a=", "{a.b.c=[", "a.", "\"a\".", "'a' . "}) {
    std::string text = "[job]\nx = ";
    if (std::string(opening).find_first_of("[{") == std::string::npos) text = "";
    for (int i = 0; i < 100000; ++i) text += opening;
    const auto faults = faults_of(text);
    ASSERT_EQ(faults.size(), 1U) << opening;
    EXPECT_NE(faults[0].found.find("nested"), std::string::npos) << opening << faults[0].text();
  }
}

}  // namespace
}  // namespace squaredig::job
