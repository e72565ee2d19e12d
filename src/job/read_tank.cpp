// [tank], [bedding]
#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

constexpr Range kDiameter{0, 10000, Ends::Above};  // mm

Rule<design::FromLine> from_line() {
  const std::string words =
      "{ line = [\"CP1\", \"CP2\"], along = ..., right = ..., angle = ... }, placing corner A";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<design::FromLine> {
            if (node.kind != Node::Kind::Table) {
              faults.wrong_value(node, words, "write the table in braces");
              return std::nullopt;
            }
            TableReader table(node, faults);
            design::FromLine from;
            const auto line = table.need("line", list_of(text(), 2));
            if (!line.empty() && (line.size() != 2 || line[0] == line[1]))
              faults.wrong_value(*table.find("line"), "two different control points",
                                 "name the line's first and second point");
            if (line.size() == 2) {
              from.line_from = line[0];
              from.line_to = line[1];
            }
            from.along = table.need("along", metres(kOffsetDistance));
            from.right = table.need("right", metres(kOffsetDistance));
            from.turn = table.need("angle", any_angle());
            table.finish();
            return from;
          }};
}

void read_outline(TableReader& table, TankTable& tank) {
  const Node* node = table.find("outline");
  if (!node) return;
  if (node->kind == Node::Kind::List) {
    tank.settings.outline =
        table.may("outline", list_of(coordinates(), 3)).value_or(std::vector<GridPoint>{});
  } else if ((tank.outline = table.may("outline", file()))) {
    tank.settings.outline_file = tank.outline->path;
  }
}

// Where the tank stands: three ways, which exclude each other.
void read_placement(TableReader& table, TankTable& tank) {
  auto& s = tank.settings;
  const bool outline = table.has("outline");
  const bool by_corner = !outline && !table.has("from");
  read_outline(table, tank);
  s.from = table.may("from", from_line());
  s.corner_a = table.need_if(by_corner, "corner_a", point_or_name());
  s.bearing_ab = table.may("bearing_ab", bearing());
  s.corner_b = table.may("corner_b", text());
  s.length = table.need_if(!outline, "length", metres(kPlanLength));
  s.width = table.need_if(!outline, "width", metres(kPlanLength));
  if (by_corner && !table.has("bearing_ab") && !table.has("corner_b"))
    table.missing("bearing_ab", bearing().words + ", or corner_b, a control point");
  constexpr const char* kOneWay = "one way to place the tank";
  table.exclude("outline", "from", kOneWay);
  table.exclude("outline", "corner_a", kOneWay);
  table.exclude("from", "corner_a", kOneWay);
  for (const char* key : {"bearing_ab", "corner_b"}) {
    table.exclude("outline", key, kOneWay);
    table.exclude("from", key, kOneWay);
  }
  table.exclude("bearing_ab", "corner_b", "the direction of side AB, or its second corner");
  for (const char* key : {"length", "width"})
    table.exclude("outline", key, "sides from the outline, or a rectangle's length and width");
}

void read_fall(TableReader& table, design::TankInput& tank, const Sides& sides) {
  tank.fall = table.need("fall_percent", fall_percent());
  tank.fall_bearing = table.may("fall_bearing", bearing());
  tank.fall_toward = table.may("fall_toward", side_name(sides));
  table.exclude("fall_bearing", "fall_toward",
                "the bearing of downhill, or the side it falls toward");
  if (tank.fall > Fall{} && !table.has("fall_bearing") && !table.has("fall_toward"))
    table.missing("fall_bearing",
                  "the bearing of downhill, or fall_toward, the side it falls toward");
}

design::PipeStub read_pipe(TableReader& table, const Sides& sides) {
  design::PipeStub pipe;
  pipe.place = table.place();
  pipe.name = table.need("name", text());
  pipe.side = table.need("side", side_name(sides));
  pipe.along = table.need("along", metres(kDistance));
  pipe.invert = table.need("invert", level());
  pipe.diameter = table.need("diameter_mm", millimetres(kDiameter));
  return pipe;
}

design::AccessShaft read_shaft(TableReader& table) {
  design::AccessShaft shaft;
  shaft.place = table.place();
  shaft.name = table.need("name", text());
  shaft.along_ab = table.need("along_ab", metres(kDistance));
  shaft.in_from_ab = table.need("in_from_ab", metres(kDistance));
  shaft.diameter = table.need("diameter_mm", millimetres(kDiameter));
  shaft.cover_level = table.need("cover_level", level());
  return shaft;
}

// Pipes and shafts are set out by name, so no two of them share one.
void check_names(const design::TankInput& tank, Faults& faults) {
  std::vector<std::pair<std::string, Place>> names;
  for (const auto& pipe : tank.pipes) names.emplace_back(pipe.name, pipe.place);
  for (const auto& shaft : tank.shafts) names.emplace_back(shaft.name, shaft.place);
  need_different_names(names, faults);
}

}  // namespace

Sides sides_of(const Job& job) {
  if (!job.tank || job.tank->outline) return {};
  const std::size_t corners = job.tank->settings.outline.size();
  return sides_of(corners == 0 ? 4 : corners);
}

void read_tank(TableReader& root, Job& job) {
  const Node* node = root.table("tank");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& tank = job.tank.emplace();
  auto& s = tank.settings;
  s.place = table.place();
  read_placement(table, tank);
  const bool unreadable_outline = table.has("outline") && !tank.outline && s.outline.empty();
  const Sides sides = unreadable_outline ? Sides{} : sides_of(job);
  s.height = table.need("height", metres(kHeight));
  s.underside_level = table.need("underside_level", level());
  read_fall(table, s, sides);
  s.module = table.may("module", two_lengths("plan size of one unit, first along A-B"));
  s.voids = table.may("void_percent", percent({0, 100, Ends::Above}));
  s.outlet_level = table.may("outlet_level", level());
  s.empty_weight = table.may("empty_weight_kn",
                             made<Force>(number("kilonewtons", {0, 1e6}), Force::kilonewtons));
  s.pipes =
      table.each<design::PipeStub>("pipe", [&](TableReader& t) { return read_pipe(t, sides); });
  s.shafts = table.each<design::AccessShaft>("shaft", read_shaft);
  table.finish();
  check_names(s, root.faults());
}

void read_bedding(TableReader& root, Job& job) {
  const Node* node = root.table("bedding");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& bedding = job.bedding.emplace();
  bedding.place = table.place();
  const std::size_t before = root.faults().count();
  bedding.thickness = table.need("thickness_mm", millimetres(kThickness));
  bedding.least = table.need_if(true, "least_mm", millimetres(kThickness));
  bedding.most = table.need_if(true, "most_mm", millimetres(kThickness));
  table.finish();
  if (root.faults().count() > before) return;
  if (*bedding.least > *bedding.most)
    root.faults().wrong_value(*table.find("least_mm"), "least_mm at most most_mm",
                              "correct one of the two");
  else if (bedding.thickness < *bedding.least || bedding.thickness > *bedding.most)
    root.faults().wrong_value(*table.find("thickness_mm"), "a thickness from least_mm to most_mm",
                              "correct the thickness or its limits");
}

}  // namespace squaredig::job
