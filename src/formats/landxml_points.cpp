#include <algorithm>
#include <array>
#include <unordered_map>
#include <utility>

#include "formats/landxml_handler.h"
#include "formats/landxml_read.h"
#include "formats/point_intake.h"
#include "formats/string_intake.h"

namespace squaredig::formats {
namespace {

struct DocumentPoint {
  std::string name;
  std::string code;
  std::array<double, 3> at{};  // easting, northing, elevation, in the document's unit
  bool has_height = true;
  int line = 0;
};

class StringsHandler : public LandXmlHandler {
 public:
  StringsHandler(const SourceFile& source, Heights heights)
      : LandXmlHandler(source), heights_(heights) {}
  std::vector<SurveyString> strings;

 protected:
  bool start_of(const XmlElement& element) override {
    if (element.name == "Breakline") {
      const auto type = element.value("brkType").value_or("standard");
      strings.push_back(
          {element.value("name").value_or("breakline " + std::to_string(strings.size() + 1)),
           source().name,
           {}});
      if (type != "standard")
        cautions.push_back(source().name + ": breakline " + quoted(strings.back().name) +
                           " of type " + quoted(type) + " is taken as a plain one");
    }
    return child_of("Breakline") && (element.name == "PntList3D" || element.name == "PntList2D");
  }

  void end_of(std::string_view name, std::string_view text) override {
    SurveyString& string = strings.back();
    const std::size_t each = name == "PntList3D" ? 3 : 2;
    const std::string what = "breakline " + quoted(string.name);
    const auto values = groups(text, each, what);
    if (!values) return;
    if (each == 2 && heights_ == Heights::Needed)
      faults.add(text_place(), what + " has no heights", "PntList3D", "export it with heights");
    if (values->size() == each)
      faults.add(text_place(), what + " has a single vertex", "two vertices or more",
                 "add the others or take it out");
    for (std::size_t i = 0; i < values->size(); i += each)
      string.vertices.push_back(
          {grid_position((*values)[i + 1], (*values)[i], each == 3 ? (*values)[i + 2] : 0),
           each == 3, text_place().line});
  }

 private:
  Heights heights_;
};

class PointsHandler : public LandXmlHandler {
 public:
  PointsHandler(const SourceFile& source, const PointsWanted& wanted)
      : LandXmlHandler(source), wanted_(wanted) {}
  std::vector<DocumentPoint> points;
  struct Reference {
    std::size_t point;
    std::string to;
    Place place;
  };
  std::vector<Reference> references;

 protected:
  bool start_of(const XmlElement& element) override {
    if (element.name == "CgPoint" && child_of("CgPoints")) {
      now_ = {element.value("name").value_or(""), element.value("code").value_or(""), {}, true, 0};
      reference_ = element.value("pntRef");
      return true;
    }
    if (element.name == "DataPoints") now_ = {"", element.value("code").value_or(""), {}, true, 0};
    return child_of("DataPoints") && (element.name == "PntList3D" || element.name == "PntList2D");
  }

  void end_of(std::string_view name, std::string_view text) override {
    now_.line = text_place().line;
    if (name == "CgPoint")
      end_point(text);
    else
      end_list(text, name == "PntList3D" ? 3 : 2);
  }

 private:
  void end_point(std::string_view text) {
    const std::string what = now_.name.empty() ? "a CgPoint" : "CgPoint " + quoted(now_.name);
    const auto values = numbers(text, what);
    if (!values) return;
    if (values->empty() && reference_) {
      references.push_back({points.size(), *reference_, text_place()});
      points.push_back(now_);
      return;
    }
    const bool plan_will_do = wanted_.heights == Heights::Optional && values->size() == 2;
    if (values->size() != 3 && !plan_will_do) {
      faults.add(text_place(),
                 std::to_string(values->size()) + (values->size() == 1 ? " number" : " numbers") +
                     " in " + what,
                 "northing, easting and elevation", "correct it");
      return;
    }
    add(*values, 0, values->size());
  }

  void end_list(std::string_view text, std::size_t each) {
    const auto values = groups(text, each, "DataPoints");
    if (!values) return;
    if (each == 2 && wanted_.heights == Heights::Needed)
      faults.add(text_place(), "DataPoints have no heights", "PntList3D",
                 "export them with heights");
    for (std::size_t i = 0; i < values->size(); i += each) add(*values, i, each);
  }

  void add(const std::vector<double>& values, std::size_t i, std::size_t each) {
    now_.at = {values[i + 1], values[i], each == 3 ? values[i + 2] : 0};
    now_.has_height = each == 3;
    points.push_back(now_);
  }

  const PointsWanted& wanted_;
  DocumentPoint now_;
  std::optional<std::string> reference_;
};

// Points without coordinates of their own take those of the point they refer to.
void resolve(PointsHandler& handler) {
  if (handler.references.empty()) return;
  std::unordered_map<std::string, std::size_t> by_name;
  for (std::size_t i = 0; i < handler.points.size(); ++i)
    by_name.try_emplace(handler.points[i].name, i);
  for (const auto& reference : handler.references) {
    const auto found = by_name.find(reference.to);
    const bool chained =
        found != by_name.end() &&
        std::any_of(handler.references.begin(), handler.references.end(),
                    [&](const auto& other) { return other.point == found->second; });
    if (found == by_name.end() || chained) {
      handler.faults.add(reference.place, "a reference to the point " + quoted(reference.to),
                         "a CgPoint of that name with coordinates", "export the file again");
      continue;
    }
    handler.points[reference.point].at = handler.points[found->second].at;
    handler.points[reference.point].has_height = handler.points[found->second].has_height;
  }
}

}  // namespace

StringsFile read_landxml_breaklines(const SourceFile& source, Heights heights) {
  StringsHandler handler(source, heights);
  std::string sha256 = read_xml(source, handler, handler.faults);
  if (handler.strings.empty())
    handler.faults.add({source.name}, "no breakline", "a surface with breaklines in its SourceData",
                       "export the breaklines too");
  StringIntake intake(source, heights);
  handler.faults.throw_if_any();
  intake.place_by(handler.stated());
  intake.faults().throw_if_any();
  for (const SurveyString& string : handler.strings) {
    intake.begin(string.name);
    for (const StringVertex& v : string.vertices)
      intake.vertex(v.at.at.easting.in_metres(), v.at.at.northing.in_metres(),
                    v.has_height ? std::optional(v.at.height.in_metres()) : std::nullopt,
                    {source.name, v.line, 1});
    intake.end(false, {source.name, string.vertices.empty() ? 1 : string.vertices[0].line, 1});
  }
  for (auto& caution : handler.cautions) intake.cautions().push_back(std::move(caution));
  return intake.finish(std::move(sha256));
}

PointsFile read_landxml_points(const SourceFile& source, const PointsWanted& wanted,
                               PointTable before) {
  PointsHandler handler(source, wanted);
  std::string sha256 = read_xml(source, handler, handler.faults);
  resolve(handler);
  if (handler.points.empty() && handler.faults.empty())
    handler.faults.add({source.name}, "neither CgPoints nor DataPoints", "points",
                       "export the points, or name the file as a surface");
  handler.faults.throw_if_any();
  PointIntake intake(source, wanted, std::move(before));
  intake.place_by(handler.stated());
  intake.faults().throw_if_any();
  for (const DocumentPoint& point : handler.points) {
    if (intake.wants_code(point.code))
      intake.take({point.at[0],
                   point.at[1],
                   point.has_height ? std::optional(point.at[2]) : std::nullopt,
                   point.name,
                   point.code,
                   {"", point.line, 1}});
    else
      intake.set_aside_code(point.line, point.code);
  }
  for (auto& caution : handler.cautions) intake.cautions().push_back(std::move(caution));
  return intake.finish(std::move(sha256));
}

}  // namespace squaredig::formats
