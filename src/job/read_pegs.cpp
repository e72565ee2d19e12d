// [pegs], [laser]
#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {

void read_pegs(TableReader& root, Job& job) {
  const Node* node = root.table("pegs");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& pegs = job.pegs.emplace();
  auto& s = pegs.settings;
  s.place = table.place();
  s.offset = table.need("offset", metres({0, 1000}));
  s.setback = table.need("setback", metres({0, 1000}));
  s.stations = table.may("stations", list_of(text())).value_or(std::vector<std::string>{});
  s.backsight = table.may("backsight", text());
  pegs.as_set = table.may("as_set", file());
  pegs.tape = table.may("tape", file());
  s.tolerance = table.need_if(true, "tolerance_mm", tolerance_mm());
  s.side_tolerance = table.need_if(true, "side_tolerance_mm", tolerance_mm());
  s.diagonal_tolerance = table.need_if(true, "diagonal_tolerance_mm", tolerance_mm());
  table.finish();
  if (s.backsight && !table.has("stations"))
    root.faults().wrong_value(*table.find("backsight"), "a backsight only with stations",
                              "name the stations, or delete backsight");
}

namespace {

// The height of instrument read from a mark needs its proof on a second one.
void read_mark(TableReader& table, design::LaserInput& laser) {
  design::LaserMark mark;
  mark.mark = table.need("mark", text());
  mark.staff_on_mark = table.need("staff_on_mark", metres({0, 20}));
  mark.check_mark = table.need("check_mark", text());
  mark.staff_on_check = table.need("staff_on_check", metres({0, 20}));
  mark.check_tolerance = table.need("check_tolerance_mm", tolerance_mm());
  if (!mark.mark.empty() && mark.mark == mark.check_mark)
    table.faults().wrong_value(*table.find("check_mark"), "a second mark, other than the first",
                               "name another mark");
  laser.mark = std::move(mark);
}

}  // namespace

void read_laser(TableReader& root, Job& job) {
  const Node* node = root.table("laser");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& laser = job.laser.emplace();
  laser.place = table.place();
  const char* const mark_keys[] = {"mark", "staff_on_mark", "check_mark", "staff_on_check",
                                   "check_tolerance_mm"};
  bool by_mark = false;
  for (const char* key : mark_keys) {
    table.exclude("plane_level", key, "the level of the plane at corner A, or a reading on a mark");
    by_mark = by_mark || table.find(key);
  }
  laser.plane_level = table.may("plane_level", level());
  if (by_mark && !table.has("plane_level")) read_mark(table, laser);
  if (!by_mark && !table.has("plane_level"))
    table.missing("plane_level", level().words + ", or mark and the readings on it");
  laser.fall = table.need("fall_percent", fall_percent());
  laser.fall_bearing =
      table.need_if(laser.fall > Fall{}, "fall_bearing", bearing()).value_or(Bearing{});
  laser.staff_length = table.need_if(true, "staff_length", metres({0, 20, Ends::Above}));
  table.finish();
}

}  // namespace squaredig::job
