// Rows of the ground's input under one numbering, so that a finding can name where they stand.
#pragma once

#include "ground/build_ground.h"

namespace squaredig::ground {

class Rows {
 public:
  explicit Rows(const GroundInput& input);
  std::size_t count() const { return first_.back(); }
  bool is_point(geometry::Index row) const { return at(row) < first_.front(); }
  GridPosition position(geometry::Index row) const;
  Place place(geometry::Index row) const;
  // "point "P7"", "string "kerb", vertex 3"
  std::string name(geometry::Index row) const;
  // The same with its file and line: "point "P7" (ground.csv:12)"
  std::string name_and_place(geometry::Index row) const;
  // Breaklines are numbered from 0, outlines after them.
  const SurveyString& string(std::size_t number) const;
  std::size_t string_count() const { return first_.size() - 1; }
  geometry::Index first_row(std::size_t string) const {
    return static_cast<geometry::Index>(first_[string]);
  }

 private:
  static std::size_t at(geometry::Index row) { return static_cast<std::size_t>(row); }
  // The string of a row that is no point, and the vertex within it.
  std::pair<std::size_t, std::size_t> vertex_of(geometry::Index row) const;

  const GroundInput* input_;
  std::vector<std::size_t> first_;  // first row of each string; the last entry is the row count
};

}  // namespace squaredig::ground
