#include "pegs/parts_internal.h"

namespace squaredig::pegs {
namespace {

// A point of the schedule, with a height where one is known.
struct Target {
  std::string name;
  GridPoint at;
  std::optional<Elevation> height;
  std::optional<Length> staff_reading;
};

struct Mark {
  std::string name;
  GridPoint at;
  std::optional<Elevation> height;
};

Mark mark_in(const Work& work, const std::string& name) {
  const PointTable& control = work.design.control;
  const auto found = control.find(name);
  if (!found)
    refuse(work.input.place, "no control point named " + quoted(name),
           "a point of the [control] file, spelled as it is there",
           "correct the name or add the point");
  const SurveyPoint& p = control.points[*found];
  return {name, p.at.at, p.has_height ? std::optional(p.at.height) : std::nullopt};
}

std::vector<Target> targets_of(const PegsResult& result) {
  std::vector<Target> targets;
  for (const ReferencePeg& p : result.reference)
    targets.push_back({p.name, p.at, p.ground, p.staff_reading});
  for (const Corner& c : result.corners)
    targets.push_back({c.name, c.at.at, c.at.height, std::nullopt});
  for (const PipePoint& p : result.pipes) targets.push_back({p.name, p.at, p.invert, std::nullopt});
  for (const ShaftPoint& s : result.shafts)
    targets.push_back({s.name, s.at, s.cover_level, std::nullopt});
  return targets;
}

PolarRow row_to(const Mark& station, const std::optional<Mark>& backsight, const Target& target,
                Ratio combined) {
  PolarRow row;
  row.station = station.name;
  row.backsight = backsight ? backsight->name : std::string();
  row.point = target.name;
  row.grid_distance = distance(station.at, target.at);
  row.ground_distance = geodesy::to_ground_length(row.grid_distance, combined);
  if (row.grid_distance > Length{}) row.bearing = Bearing::of_line(station.at, target.at);
  if (backsight)
    row.turn = Bearing::clockwise(Bearing::of_line(station.at, backsight->at), row.bearing);
  if (station.height && target.height) row.height_difference = *target.height - *station.height;
  row.staff_reading = target.staff_reading;
  return row;
}

void add_station(const Mark& station, const std::optional<Mark>& backsight, PegsResult& result) {
  const Ratio combined = result.scale.combined;
  const Target* before = nullptr;
  const auto targets = targets_of(result);
  for (const Target& target : targets) {
    PolarRow row = row_to(station, backsight, target, combined);
    if (before != nullptr) {
      row.check_from = before->name;
      row.check_distance = geodesy::to_ground_length(distance(before->at, target.at), combined);
    }
    before = &target;
    result.polar.push_back(std::move(row));
  }
  if (!backsight) return;
  PolarRow check =
      row_to(station, backsight, {backsight->name, backsight->at, backsight->height, std::nullopt},
             combined);
  result.backsight_checks.push_back(std::move(check));
}

}  // namespace

void add_schedules(const Work& work, PegsResult& result) {
  std::optional<Mark> backsight;
  if (work.input.backsight) backsight = mark_in(work, *work.input.backsight);
  for (const std::string& name : work.input.stations) {
    const Mark station = mark_in(work, name);
    if (backsight && backsight->at == station.at)
      refuse(work.input.place,
             "station " + quoted(name) + " and backsight " + quoted(backsight->name) +
                 " are one place",
             "a backsight away from the station", "name another backsight");
    add_station(station, backsight, result);
  }
}

}  // namespace squaredig::pegs
