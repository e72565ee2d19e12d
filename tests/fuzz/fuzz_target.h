// What every fuzzer does with its file: readers read it, and what comes out is sound or a Refusal
// with places; anything else ends the process.
#pragma once

#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "formats/source_file.h"
#include "quantity/points.h"

namespace squaredig::fuzz {

// The readings of one fuzzer: what it tries with a file, named "fuzz".
void read_input(const formats::SourceFile& file);

inline void wanted(bool holds) {
  if (!holds) std::abort();
}

inline void sound(const GridPosition& p) {
  wanted(std::isfinite(p.at.easting.in_metres()) && std::isfinite(p.at.northing.in_metres()) &&
         std::isfinite(p.height.in_metres()));
}
inline void sound(const PointTable& table) {
  for (std::size_t i = 0; i < table.size(); ++i) {
    sound(table.points[i].at);
    wanted(table.label(i).size() < 65536 && table.code(i).size() < (1U << 24U));
  }
}
inline void sound(const std::vector<SurveyString>& strings) {
  for (const auto& string : strings) {
    wanted(string.vertices.size() >= 2);
    for (const auto& vertex : string.vertices) sound(vertex.at);
  }
}
inline void sound(const SurfaceMesh& mesh) {
  for (const auto& vertex : mesh.vertices) sound(vertex);
  for (const auto& face : mesh.faces)
    for (const auto corner : face)
      wanted(corner >= 0 && static_cast<std::size_t>(corner) < mesh.vertices.size());
}

// A Refusal is an answer: each of its problems has a place, and says something in one line.
template <class Read>
void reading(Read read) {
  try {
    read();
  } catch (const Refusal& refusal) {
    wanted(!refusal.problems().empty());
    for (const auto& problem : refusal.problems()) {
      wanted(problem.kind == ProblemKind::Input && problem.place.line >= 1 &&
             problem.place.column >= 1 && !problem.found.empty());
      wanted(problem.text().find('\n') == std::string::npos);
    }
  }
}

}  // namespace squaredig::fuzz
