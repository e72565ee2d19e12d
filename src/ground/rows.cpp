#include <algorithm>

#include "ground/rows_internal.h"

namespace squaredig::ground {

Rows::Rows(const GroundInput& input) : input_(&input), first_{input.points.size()} {
  for (const auto* strings : {&input.breaklines, &input.outline})
    for (const SurveyString& s : *strings) first_.push_back(first_.back() + s.vertices.size());
}

const SurveyString& Rows::string(std::size_t number) const {
  const std::size_t breaklines = input_->breaklines.size();
  return number < breaklines ? input_->breaklines[number] : input_->outline[number - breaklines];
}

std::pair<std::size_t, std::size_t> Rows::vertex_of(geometry::Index row) const {
  const auto after = std::upper_bound(first_.begin(), first_.end(), at(row));
  const auto string = static_cast<std::size_t>(after - first_.begin()) - 1;
  return {string, at(row) - first_[string]};
}

GridPosition Rows::position(geometry::Index row) const {
  if (is_point(row)) return input_->points.points[at(row)].at;
  const auto [s, v] = vertex_of(row);
  return string(s).vertices[v].at;
}

Place Rows::place(geometry::Index row) const {
  if (is_point(row)) return input_->points.place(at(row));
  const auto [s, v] = vertex_of(row);
  return {string(s).file, string(s).vertices[v].line, 1};
}

std::string Rows::name(geometry::Index row) const {
  if (is_point(row)) return "point " + quoted(input_->points.label(at(row)));
  const auto [s, v] = vertex_of(row);
  return "vertex " + std::to_string(v + 1) + " of string " + quoted(string(s).name);
}

std::string Rows::name_and_place(geometry::Index row) const {
  const Place p = place(row);
  return name(row) + " (" + p.file + ":" + std::to_string(p.line) + ")";
}

}  // namespace squaredig::ground
