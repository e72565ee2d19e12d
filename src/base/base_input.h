// What the base stage works from: the table [base] as checked, with its files read. A tolerance
// that is not given is not asked: its value is shown and not counted.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/compaction_test.h"
#include "quantity/points.h"
#include "quantity/slope.h"

namespace squaredig::base {

struct Straightedge {
  Length length;
  Length tolerance;
};

struct BaseInput {
  PointTable points;  // every point of the files; `codes` and `toe_codes` tell them apart
  std::vector<std::string> codes;       // of base points; empty: all but toe points
  std::vector<std::string> toe_codes;   // of the surveyed toe line; empty: extent is not asked
  std::optional<std::string> surveyed;  // when, printed
  std::optional<std::string> after_repair_surveyed;  // when the survey after repair was made
  std::optional<Tolerance> level_tolerance;
  std::optional<Length> mean_tolerance;
  std::optional<Length> flatness_tolerance;
  std::optional<Straightedge> straightedge;
  std::optional<Length> stack_gap_tolerance;
  std::optional<Fall> fall_tolerance;
  std::optional<Length> extent_tolerance;
  std::optional<Length> spacing;  // of a square grid of points that would just do
  Length sigma_height;            // of one measured base point
  Length sigma_plan;
  Length sigma_common;  // shared by all points
  Ratio confidence;     // between one half and one
  std::optional<PointTable> after_repair;
  std::optional<Area> least_repair;  // smaller patches are joined or left, and told
  std::optional<std::vector<CompactionTest>> tests;
  std::optional<Ratio> density_ratio;        // least ratio asked of a test, from [fill]
  std::optional<PointTable> bedding_points;  // top of bedding as laid
  Place place;
};

}  // namespace squaredig::base
