// What a key may hold: a Rule reads one value of the file, or tells the fault and gives nothing.
// Rules are built from one another: per_side(metres(kLength), sides), list_of(coordinates()).
//
// Units: the key's name carries its unit; the rule turns it into the quantity.
// Errors: a fault where the value is of another kind, or out of range.
// Source: the house's own, docs/job-file.md.
#pragma once

#include <functional>
#include <optional>

#include "design/design_input.h"
#include "job/faults.h"
#include "job/file_spec.h"
#include "quantity/tolerance.h"

namespace squaredig::job {

template <class T>
struct Rule {
  std::string words;  // what is needed: "a length in metres above 0 and at most 100"
  std::function<std::optional<T>(const Node&, Faults&)> read;
};

enum class Ends { Closed, Above, Between };  // least itself: allowed, not allowed; most neither

struct Range {
  double least = 0;
  double most = 0;
  Ends ends = Ends::Closed;
  bool holds(double value) const;
  std::string words() const;  // "above 0 and at most 100"
};

inline constexpr Range kPlanLength{0, 10000, Ends::Above};
inline constexpr Range kDistance{0, 10000};             // may be zero
inline constexpr Range kOffsetDistance{-10000, 10000};  // either way
inline constexpr Range kHeight{0, 100, Ends::Above};
inline constexpr Range kLevel{-20000, 20000};
inline constexpr Range kThickness{0, 10000};  // mm, may be zero
inline constexpr Range kSomeThickness{0, 10000, Ends::Above};
inline constexpr Range kFall{0, 100};  // percent
inline constexpr Range kSigma{0, 10000};

// A plain number; `what` names it with its unit: "a length in metres".
Rule<double> number(const std::string& what, Range range);
Rule<int> whole_number(const std::string& what, Range range);
Rule<Length> metres(Range range);
Rule<Length> millimetres(Range range);
Rule<Length> tolerance_mm();
Rule<Elevation> level();
Rule<Fall> fall_percent();
Rule<Ratio> ratio(const std::string& what, Range range);
Rule<Ratio> percent(Range range);
Rule<Density> soil_density();  // tonnes per cubic metre, above 0 and at most 5
Rule<Angle> any_angle();
Rule<Bearing> bearing();
Rule<Batter> batter();
Rule<std::string> text();
Rule<std::chrono::year_month_day> date();
Rule<GridPoint> coordinates();
Rule<GridPosition> line_point();  // easting, northing, invert
Rule<design::PointOrName> point_or_name();
Rule<std::pair<Length, Length>> two_lengths(const std::string& what);

// A rule whose values are given by a function of another's.
template <class T, class From, class Make>
Rule<T> made(Rule<From> from, Make make) {
  return {from.words, [read = from.read, make](const Node& n, Faults& f) -> std::optional<T> {
            if (auto value = read(n, f)) return make(*value);
            return std::nullopt;
          }};
}

// A list of at least `least` values that each keep the rule.
template <class T>
Rule<std::vector<T>> list_of(Rule<T> rule, std::size_t least = 1) {
  std::string words = "a list of " + std::to_string(least) + " or more, each " + rule.words;
  return {words, [=](const Node& node, Faults& faults) -> std::optional<std::vector<T>> {
            if (node.kind != Node::Kind::List || node.items.size() < least) {
              faults.wrong_value(node, words, "write it in brackets: [ ..., ... ]");
              return std::nullopt;
            }
            std::vector<T> values;
            for (const Node& item : node.items)
              if (auto value = rule.read(item, faults)) values.push_back(std::move(*value));
            if (values.size() != node.items.size()) return std::nullopt;
            return values;
          }};
}

// One of some words, each standing for a value.
template <class T>
Rule<T> one_of(std::vector<std::pair<std::string, T>> choices) {
  std::vector<std::string> names;
  names.reserve(choices.size());
  for (const auto& [name, value] : choices) names.push_back("\"" + name + "\"");
  const std::string words = any_of(names);
  return {words, [=](const Node& node, Faults& faults) -> std::optional<T> {
            for (const auto& [name, value] : choices)
              if (node.kind == Node::Kind::Text && node.text == name) return value;
            faults.wrong_value(node, words, "write one of these words, in quotes");
            return std::nullopt;
          }};
}

}  // namespace squaredig::job
