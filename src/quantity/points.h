// Points and strings as a field file gave them: label and code exactly as spelled, position on the
// grid, and the place in the file, so that a finding can name the line.
//
// Laws: points.1  label(i) and code(i) give back the bytes that were added.
// Accuracy: positions are kept as read. A table of n points takes 48 n bytes and its texts.
// Errors: Refusal for a label too long to keep.
// Source: the house's own.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "quantity/position.h"
#include "quantity/problem.h"

namespace squaredig {

struct SurveyPoint {
  GridPosition at;
  float sigma_plan_mm = -1;    // below zero: not given
  float sigma_height_mm = -1;  // below zero: not given
  std::uint32_t label = 0;     // where its text starts in the table
  std::uint32_t code = 0;      // number of the code in the table
  std::uint32_t line = 0;
  std::uint16_t file = 0;
  bool has_height = true;

  std::optional<Length> sigma_plan() const {
    return sigma_plan_mm < 0
               ? std::nullopt
               : std::optional(Length::millimetres(static_cast<double>(sigma_plan_mm)));
  }
  std::optional<Length> sigma_height() const {
    return sigma_height_mm < 0
               ? std::nullopt
               : std::optional(Length::millimetres(static_cast<double>(sigma_height_mm)));
  }
};

class PointTable {
 public:
  std::vector<SurveyPoint> points;
  std::vector<std::string> files;

  std::size_t size() const { return points.size(); }
  bool empty() const { return points.empty(); }
  std::string_view label(std::size_t i) const { return text_at(points[i].label); }
  std::string_view code(std::size_t i) const { return codes_[points[i].code]; }
  Place place(std::size_t i) const {
    return {files.empty() ? std::string() : files[points[i].file], static_cast<int>(points[i].line),
            1};
  }
  // Adds a point with its texts; label and code of `point` are filled here.
  void add(SurveyPoint point, std::string_view label, std::string_view code);
  // The number under which the next points' file is kept.
  std::uint16_t add_file(std::string file);
  // The first point with that label, if there is one.
  std::optional<std::size_t> find(std::string_view label) const;

 private:
  std::string_view text_at(std::uint32_t start) const;
  std::string texts_;               // each text: its length in two bytes, then its bytes
  std::vector<std::string> codes_;  // each code once
  std::unordered_map<std::string, std::uint32_t> code_numbers_;
};

// One string: its vertices in order. A vertex without height has has_height false.
struct StringVertex {
  GridPosition at;
  bool has_height = true;
  int line = 0;
};

struct SurveyString {
  std::string name;
  std::string file;
  std::vector<StringVertex> vertices;
};

// A triangulated surface on the grid, as exchanged with other programs. Each face is three vertex
// numbers, counted from 0.
struct SurfaceMesh {
  std::string name;
  std::vector<GridPosition> vertices;
  std::vector<std::array<std::int32_t, 3>> faces;
  std::string file;
};

}  // namespace squaredig
