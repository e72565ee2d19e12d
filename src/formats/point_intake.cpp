#include "formats/point_intake.h"

#include <algorithm>
#include <cmath>

#include "formats/repeated_names.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kSetAsideListed = 1000;

bool finite(const GridPosition& p) {
  return std::isfinite(p.at.easting.in_metres()) && std::isfinite(p.at.northing.in_metres()) &&
         std::isfinite(p.height.in_metres());
}

}  // namespace

PointIntake::PointIntake(const SourceFile& source, PointsWanted wanted, PointTable before)
    : source_(source), wanted_(std::move(wanted)), first_(before.size()) {
  file_.points = std::move(before);
  number_ = file_.points.add_file(source.name);
  file_.record.file = source.name;
  file_.columns = {{source.name}, {source.name}};
}

void PointIntake::place_by(const StatedCrs& stated) {
  placing_ = Placing(stated, source_, faults_, file_.assumed, file_.cautions);
}

bool PointIntake::wants_code(std::string_view code) const {
  const auto& codes = source_.codes;
  return codes.empty() || std::find(codes.begin(), codes.end(), code) != codes.end();
}

void PointIntake::take(const PointRead& raw) {
  ++file_.record.read;
  ++file_.record.used;
  const Place place{source_.name, raw.place.line, raw.place.column};
  SurveyPoint point;
  point.has_height = raw.up.has_value();
  point.at = placing_.at(raw.east, raw.north, raw.up.value_or(0));
  if (!finite(point.at))
    return faults_.add(place, "a coordinate that is not finite", "finite coordinates",
                       "export the file again");
  if (!raw.up && wanted_.heights == Heights::Needed)
    return faults_.add(place, "a point without height", "easting, northing and height",
                       "export the points with their heights");
  all_heights_zero_ = all_heights_zero_ && raw.up.value_or(1) == 0;
  file_.extent.add(point.at.at);
  if (wanted_.keep && !wanted_.keep(point.at)) return;
  any_label_ = any_label_ || !raw.label.empty();
  point.line = static_cast<std::uint32_t>(raw.place.line);
  point.file = number_;
  file_.points.add(point, raw.label, raw.code);
}

void PointIntake::set_aside(int line, std::string_view why) {
  ++file_.record.read;
  if (++aside_ <= kSetAsideListed)
    file_.record.set_aside.push_back({line, std::string(why)});
  else if (aside_ == kSetAsideListed + 1)
    file_.record.set_aside.push_back({line, ""});
}

void PointIntake::set_aside_code(int line, std::string_view code) {
  set_aside(line, aside_ < kSetAsideListed ? "code " + quoted(code) + " is not asked for" : "");
}

PointsFile PointIntake::finish(std::string sha256) {
  if (faults_.empty() && file_.record.read == 0)
    faults_.add({source_.name}, "no points", "a file with points", "export the points");
  if (faults_.empty() && wanted_.names == Names::Unique)
    refuse_repeated(repeated_names(file_.points, first_), source_.name, faults_);
  faults_.throw_if_any();
  // a cloud has no names: nothing to tell apart, nothing to tell
  if (wanted_.names == Names::Told && any_label_)
    tell_repeated(repeated_names(file_.points, first_), source_.name, file_.cautions);
  if (file_.record.used == 0)
    file_.cautions.push_back(source_.name + ": no point has a code that is asked for");
  else if (all_heights_zero_ && file_.record.used > 2)
    file_.cautions.push_back(source_.name + ": every height is 0");
  if (aside_ > kSetAsideListed)
    file_.record.set_aside.back().why = std::to_string(aside_ - kSetAsideListed) +
                                        " points from here on that are not listed one by one";
  file_.record.sha256 = std::move(sha256);
  return std::move(file_);
}

}  // namespace squaredig::formats
