#include "job/rules.h"

#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::job {
namespace {

constexpr Range kCoordinate{-1e8, 1e8};
constexpr Range kAnyAngle{-1e9, 1e9};  // turns are taken off

// What to do about a value that is no number, or not in range.
std::string number_remedy(const Node& node, const Range& range) {
  if (node.kind == Node::Kind::Text)
    return parse_number(node.text) ? "write the number without quotes" : "write a number";
  if (node.kind != Node::Kind::Number) return "write a number";
  if (!std::isfinite(node.number)) return "write an ordinary number";
  if (node.number < 0 && range.least == 0) return "type it positive";
  return "correct the value or its unit";
}

std::optional<std::vector<double>> numbers(const Node& node, const std::vector<Range>& ranges) {
  if (node.kind != Node::Kind::List || node.items.size() != ranges.size()) return std::nullopt;
  std::vector<double> values;
  for (std::size_t i = 0; i < ranges.size(); ++i) {
    const Node& item = node.items[i];
    if (item.kind != Node::Kind::Number || !ranges[i].holds(item.number)) return std::nullopt;
    values.push_back(item.number);
  }
  return values;
}

// A list of exactly as many numbers as there are ranges.
Rule<std::vector<double>> tuple_of(const std::string& words, const std::vector<Range>& ranges) {
  return {words, [=](const Node& node, Faults& faults) {
            auto values = numbers(node, ranges);
            if (!values) faults.wrong_value(node, words, "write the numbers in brackets");
            return values;
          }};
}

bool one_printed_line(std::string_view text) {
  for (const char c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) return false;
  return trimmed(text).size() == text.size() && !text.empty();
}

}  // namespace

bool Range::holds(double value) const {
  if (!std::isfinite(value)) return false;
  if (ends == Ends::Closed ? value < least : value <= least) return false;
  return ends == Ends::Between ? value < most : value <= most;
}

std::string Range::words() const {
  const std::string low = shortest(least);
  const std::string high = shortest(most);
  switch (ends) {
    case Ends::Above:
      return "above " + low + " and at most " + high;
    case Ends::Between:
      return "above " + low + " and below " + high;
    default:
      return "from " + low + " to " + high;
  }
}

Rule<double> number(const std::string& what, Range range) {
  const bool any = range.least <= kAnyAngle.least;
  const std::string words = any ? what : what + " " + range.words();
  return {words, [=](const Node& node, Faults& faults) -> std::optional<double> {
            if (node.kind == Node::Kind::Number && range.holds(node.number)) return node.number;
            faults.wrong_value(node, words, number_remedy(node, range));
            return std::nullopt;
          }};
}

Rule<int> whole_number(const std::string& what, Range range) {
  const std::string words = what + ", a whole number " + range.words();
  return {words, [=](const Node& node, Faults& faults) -> std::optional<int> {
            if (node.kind == Node::Kind::Number && node.whole && range.holds(node.number))
              return static_cast<int>(node.number);
            faults.wrong_value(node, words,
                               node.kind == Node::Kind::Number ? "write a whole number in range"
                                                               : number_remedy(node, range));
            return std::nullopt;
          }};
}

Rule<Length> metres(Range range) {
  return made<Length>(number("a length in metres", range), Length::metres);
}

Rule<Length> millimetres(Range range) {
  return made<Length>(number("millimetres", range), Length::millimetres);
}

Rule<Length> tolerance_mm() {
  return made<Length>(number("a tolerance in millimetres", kThickness), Length::millimetres);
}

Rule<Elevation> level() {
  return made<Elevation>(number("a level in metres", kLevel), Elevation::metres);
}

Rule<Fall> fall_percent() {
  return made<Fall>(number("drop per run in percent", kFall), Fall::percent);
}

Rule<Ratio> ratio(const std::string& what, Range range) {
  return made<Ratio>(number(what, range), Ratio::of);
}

Rule<Ratio> percent(Range range) { return made<Ratio>(number("percent", range), Ratio::percent); }

Rule<Density> soil_density() {
  return made<Density>(number("tonnes per cubic metre", {0, 5, Ends::Above}),
                       Density::tonnes_per_cubic_metre);
}

Rule<Angle> any_angle() {
  return made<Angle>(number("an angle in decimal degrees", kAnyAngle), Angle::degrees);
}

Rule<Bearing> bearing() {
  return made<Bearing>(number("a bearing in decimal degrees clockwise from grid north", kAnyAngle),
                       Bearing::degrees);
}

Rule<Batter> batter() {
  const std::string words =
      "run per rise as text: \"1.5:1\" for 1.5 across for each 1 up, \"0:1\" for vertical";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<Batter> {
            constexpr double kFlattest = 100;
            if (node.kind == Node::Kind::Text)
              if (const auto read = Batter::parse(node.text))
                if (read->run_per_rise() <= kFlattest) return *read;
            faults.wrong_value(node, words, "write run:rise in quotes, the run at most 100");
            return std::nullopt;
          }};
}

Rule<std::string> text() {
  const std::string words = "text on one line, at most 200 plain letters";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<std::string> {
            constexpr std::size_t kLongest = 200;
            if (node.kind == Node::Kind::Text && node.text.size() <= kLongest &&
                one_printed_line(node.text))
              return node.text;
            faults.wrong_value(node, words,
                               node.kind == Node::Kind::Text
                                   ? "write text without blanks at its ends or control characters"
                                   : "write the text in quotes");
            return std::nullopt;
          }};
}

Rule<std::chrono::year_month_day> date() {
  const std::string words = "a date such as 2026-03-02";
  return {words, [=](const Node& node, Faults& faults) {
            std::optional<std::chrono::year_month_day> read;
            if (node.kind == Node::Kind::Date && node.date.ok()) read = node.date;
            if (!read) faults.wrong_value(node, words, "write year-month-day without quotes");
            return read;
          }};
}

Rule<GridPoint> coordinates() {
  return made<GridPoint>(tuple_of("[easting, northing] in metres", {kCoordinate, kCoordinate}),
                         [](const std::vector<double>& v) { return grid_point(v[0], v[1]); });
}

Rule<GridPosition> line_point() {
  return made<GridPosition>(
      tuple_of("[easting, northing, invert] in metres", {kCoordinate, kCoordinate, kLevel}),
      [](const std::vector<double>& v) { return grid_position(v[0], v[1], v[2]); });
}

Rule<design::PointOrName> point_or_name() {
  const std::string words = "[easting, northing] in metres, or the name of a control point";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<design::PointOrName> {
            if (node.kind == Node::Kind::Text) {
              if (auto name = text().read(node, faults)) return *name;
              return std::nullopt;
            }
            if (const auto v = numbers(node, {kCoordinate, kCoordinate}))
              return grid_point((*v)[0], (*v)[1]);
            faults.wrong_value(node, words, "write two numbers in brackets, or a name in quotes");
            return std::nullopt;
          }};
}

Rule<std::pair<Length, Length>> two_lengths(const std::string& what) {
  return made<std::pair<Length, Length>>(
      tuple_of(what + ": two lengths in metres, each above 0", {kPlanLength, kPlanLength}),
      [](const std::vector<double>& v) {
        return std::pair(Length::metres(v[0]), Length::metres(v[1]));
      });
}

}  // namespace squaredig::job
