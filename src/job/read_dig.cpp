// [dig], [progress]
#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

design::Bench read_bench(TableReader& table) {
  design::Bench bench;
  bench.place = table.place();
  bench.above_floor = table.need("above_floor", metres(kHeight));
  bench.width = table.need("width", metres({0, 100}));
  bench.batter = table.may("batter", batter());
  return bench;
}

design::Ramp read_ramp(TableReader& table, const Sides& sides) {
  design::Ramp ramp;
  ramp.place = table.place();
  ramp.side = table.need("side", side_name(sides));
  ramp.along = table.need("along", metres(kDistance));
  ramp.width = table.need("width", metres(kHeight));
  ramp.slope = table.need("slope", batter());
  ramp.batter = table.need("batter", batter());
  if (table.has("slope") && ramp.slope.vertical())
    table.faults().wrong_value(*table.find("slope"), "a slope with some run, such as \"6:1\"",
                               "write run:rise of the ramp");
  return ramp;
}

design::Sump read_sump(TableReader& table) {
  design::Sump sump;
  sump.place = table.place();
  sump.outline = table.need("outline", list_of(coordinates(), 3));
  sump.level = table.need("level", level());
  sump.batter = table.need("batter", batter());
  return sump;
}

design::Trench read_trench(TableReader& table) {
  design::Trench trench;
  trench.place = table.place();
  trench.line = table.need("line", list_of(line_point(), 2));
  trench.width = table.need("width", metres(kHeight));
  trench.wall = table.need("wall_mm", millimetres(kThickness));
  trench.bedding = table.need("bedding_mm", millimetres(kThickness));
  trench.batter = table.need("batter", batter());
  return trench;
}

void read_pit(TableReader& table, design::PitInput& pit, const Sides& sides) {
  pit.place = table.place();
  pit.gap = table.need("gap", per_side(metres({0, 100}), sides));
  pit.batter = table.need("batter", per_side(batter(), sides));
  pit.batter_given_by = table.may("batter_given_by", text());
  pit.corners = table
                    .may("corners", one_of<design::Corners>({{"mitre", design::Corners::Mitre},
                                                             {"round", design::Corners::Round}}))
                    .value_or(design::Corners::Mitre);
  pit.benches = table.each<design::Bench>("benches", read_bench);
  pit.ramps = table.each<design::Ramp>("ramp", [&](TableReader& t) { return read_ramp(t, sides); });
  pit.sumps = table.each<design::Sump>("sump", read_sump);
  pit.trenches = table.each<design::Trench>("trench", read_trench);
  pit.vertical_caution_depth = table.need_if(true, "vertical_caution_depth", metres({0, 100}));
}

void read_settings(TableReader& table, dig::DigInput& dig) {
  dig.place = table.place();
  dig.bulking = table.may("bulking", ratio("loose volume per volume in the ground", {1, 3}));
  dig.truck = table.may(
      "truck_m3",
      made<LooseVolume>(number("cubic metres", {0, 1000, Ends::Above}), LooseVolume::cubic_metres));
  const auto load =
      table.may("truck_t", made<Mass>(number("tonnes", {0, 1000, Ends::Above}), Mass::tonnes));
  const auto loose = table.need_if(load.has_value(), "loose_t_per_m3", soil_density());
  if (load && loose) dig.truck_mass = {*load, *loose};
  if (loose && !table.has("truck_t"))
    table.faults().add(table.place_of("loose_t_per_m3"), "dig.loose_t_per_m3 without dig.truck_t",
                       "the mass that one truck carries beside it", "add truck_t, or take it out");
  dig.keep = table.may(
      "keep_m3", made<BankVolume>(number("cubic metres", {0, 1e7}), BankVolume::cubic_metres));
  dig.strip = table.may("strip_mm", millimetres(kThickness));
  dig.cell = table.need("cell", metres({0.01, 1000}));
  dig.raster = table
                   .may("raster", one_of<dig::RasterFrame>({{"tank", dig::RasterFrame::Tank},
                                                            {"north", dig::RasterFrame::North}}))
                   .value_or(dig::RasterFrame::Tank);
  dig.rough_above = table.may("rough_above_mm", millimetres(kThickness));
  dig.spoil_setback = table.may("spoil_setback", metres({0, 1000}));
}

}  // namespace

void read_dig(TableReader& root, Job& job) {
  const Node* node = root.table("dig");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& dig = job.dig.emplace();
  read_pit(table, dig.pit, sides_of(job));
  read_settings(table, dig.settings);
  table.finish();
  if (!table.has("corners"))
    job.assumed.push_back("corners: \"mitre\", as [dig] does not say: batters meet in a line");
}

NamedSurvey named_survey(TableReader& table) {
  NamedSurvey survey;
  survey.place = table.place();
  survey.name = table.need("name", text());
  survey.points = table.need("points", file());
  return survey;
}

void need_different_names(const std::vector<std::pair<std::string, Place>>& names, Faults& faults) {
  for (std::size_t i = 0; i < names.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (!names[i].first.empty() && names[i].first == names[j].first)
        faults.add(names[i].second, "the name " + quoted(names[i].first) + " a second time",
                   "a name of its own for each", "rename one of the two");
}

void read_progress(TableReader& root, Job& job) {
  const Node* node = root.table("progress");
  if (!node) return;
  TableReader table(*node, root.faults());
  job.progress = table.each<NamedSurvey>("surveys", named_survey);
  if (!table.has("surveys"))
    table.missing("surveys", "a list of { name = \"...\", points = \"...\" }");
  table.finish();
  std::vector<std::pair<std::string, Place>> names;
  for (const auto& survey : job.progress) names.emplace_back(survey.name, survey.place);
  need_different_names(names, root.faults());
}

}  // namespace squaredig::job
