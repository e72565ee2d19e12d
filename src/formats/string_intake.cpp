#include "formats/string_intake.h"

#include <cmath>
#include <map>

namespace squaredig::formats {

StringIntake::StringIntake(const SourceFile& source, Heights heights)
    : source_(source), heights_(heights) {
  file_.record.file = source.name;
  file_.columns = {{source.name}, {source.name}};
}

void StringIntake::place_by(const StatedCrs& stated) {
  placing_ = Placing(stated, source_, faults_, file_.assumed, file_.cautions);
}

void StringIntake::begin(std::string name) {
  file_.strings.push_back({std::move(name), source_.name, {}});
}

void StringIntake::vertex(double east, double north, std::optional<double> up, const Place& at) {
  const Place place{source_.name, at.line, at.column};
  ++file_.record.read;
  ++file_.record.used;
  StringVertex vertex{placing_.at(east, north, up.value_or(0)), up.has_value(), at.line};
  if (!std::isfinite(vertex.at.at.easting.in_metres()) ||
      !std::isfinite(vertex.at.at.northing.in_metres()) ||
      !std::isfinite(vertex.at.height.in_metres()))
    return faults_.add(place, "a coordinate that is not finite", "finite coordinates",
                       "export the file again");
  if (!up && heights_ == Heights::Needed)
    return faults_.add(place,
                       "a vertex without height, of string " + quoted(file_.strings.back().name),
                       "easting, northing and height", "export the string with its heights");
  file_.extent.add(vertex.at.at);
  file_.strings.back().vertices.push_back(vertex);
}

void StringIntake::end(bool closed, const Place& at) {
  SurveyString& string = file_.strings.back();
  auto& vertices = string.vertices;
  if (vertices.size() < 2 && faults_.empty())
    return faults_.add({source_.name, at.line, at.column},
                       "string " + quoted(string.name) + " has " +
                           (vertices.empty() ? "no vertex" : "a single vertex"),
                       "two vertices or more", "add the others or take it out");
  if (closed && !vertices.empty() && !(vertices.front().at == vertices.back().at))
    vertices.push_back(vertices.front());
}

void StringIntake::number_names() {
  std::map<std::string, int> times;
  for (const SurveyString& string : file_.strings) ++times[string.name];
  std::map<std::string, int> number;
  for (SurveyString& string : file_.strings)
    if (times[string.name] > 1) {
      const int n = ++number[string.name];
      string.name += (string.name.empty() ? "" : " ") + std::to_string(n);
    }
}

StringsFile StringIntake::finish(std::string sha256) {
  if (faults_.empty() && file_.strings.empty())
    faults_.add({source_.name}, "no strings", "a file with strings", "export the lines");
  faults_.throw_if_any();
  bool all_zero = true;
  for (const SurveyString& string : file_.strings)
    for (const StringVertex& vertex : string.vertices)
      all_zero = all_zero && vertex.has_height && vertex.at.height == Elevation::metres(0);
  if (all_zero && heights_ == Heights::Needed)
    file_.cautions.push_back(source_.name + ": every height is 0");
  number_names();
  file_.record.sha256 = std::move(sha256);
  return std::move(file_);
}

}  // namespace squaredig::formats
