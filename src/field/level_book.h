// The level book: rows become stands of the level, stands become runs, and the page is checked.
//
// What: a stand is one set-up of the level: a backsight, intermediate sights, a foresight. A run is
//   the stands from one start to the next; a new one begins at a backsight that does not stand on
//   the last foresight's point.
// Frame and units: readings in metres, negative on an inverted staff.
// Laws: level_book.1 sum of backsights less foresights is sum of rises less falls and last less
//   first; level_book.2 what the book worked out itself is compared row by row, and each row
//   where it departs is told.
// Accuracy: sums rounded once per reading.
// Errors: Refusal of all rows that stand where they cannot.
// Source: rise and fall, and height of collimation: common practice, no source; worked pages in
//   tests/published/field_levels_test.cpp.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "field/field_input.h"
#include "field/field_result.h"

namespace squaredig::field {

struct StaffReading {
  std::string point;
  Length reading;
  Place place;
};

struct Stand {
  StaffReading back;
  std::vector<StaffReading> between;
  std::optional<StaffReading> fore;
  std::optional<Length> distance;  // levelled, from the backsight's point to the foresight's
  // Foresight's point above the backsight's.
  Length rise() const { return back.reading - fore->reading; }
};

struct Run {
  std::vector<Stand> stands;
  LevelPage page;
  std::vector<Finding> findings;  // of the page
  const StaffReading& first() const { return stands.front().back; }
  // Nothing where no foresight ends the run.
  const StaffReading* last() const { return stands.back().fore ? &*stands.back().fore : nullptr; }
};

std::vector<Run> open_level_book(std::span<const LevelLine> lines);

// How far a level sight over the distance reads too high: earth's curve less refraction,
// (1 - k) d^2 / 2R.
Length curvature_and_refraction(Length distance, Length radius, Ratio refraction);

}  // namespace squaredig::field
