#include "report/base_words.h"

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

std::string amount_text(const std::optional<base::Amount>& amount, const base::Check& check) {
  if (!amount) return "";
  if (const auto* length = std::get_if<Length>(&*amount)) {
    if (check.name == "coverage") return metres_text(*length, 3) + " m";
    const bool sided = check.name.starts_with("level");
    return (sided ? signed_mm_text(*length) : mm_text(*length)) + " mm";
  }
  if (const auto* fall = std::get_if<Fall>(&*amount)) return fixed(fall->in_percent(), 3) + " %";
  return fixed(std::get<Ratio>(*amount).in_percent(), 1) + " %";
}

Table checks_as(const std::string& title, const std::vector<base::Check>& checks) {
  Table table{title,
              {words_column("check"), words_column("answer"), figures_column("value"),
               figures_column("uncertainty"), figures_column("limit"), words_column("where")},
              {},
              {}};
  for (const auto& check : checks) {
    base::Check plain = check;  // an uncertainty has no side, nor has the limit of the mean
    if (check.name.starts_with("level")) plain.name.clear();
    const base::Check& limit = check.name == "level mean" ? plain : check;
    table.rows.push_back({check.name, words(check.verdict), amount_text(check.value, check),
                          amount_text(check.uncertainty, plain), amount_text(check.limit, limit),
                          check.words});
  }
  return table;
}

Table repair_table(const base::BaseResult& base) {
  Table table{"Repair list, tied to string A-B",
              {words_column("no."), words_column("work"), figures_column("area"),
               figures_column("volume"), words_column("point"), figures_column("along A-B"),
               figures_column("in"), figures_column("move, mm")},
              {},
              {"Move: the correction at the point, down is negative. Along A-B from A, then square "
               "to it into the tank."}};
  for (const auto& patch : base.repair) {
    const char* work = patch.work == base::Work::Trim ? "trim" : "make up";
    auto spots = patch.spots;
    if (spots.empty()) spots.push_back(patch.deepest);
    for (std::size_t i = 0; i < spots.size(); ++i)
      table.rows.push_back({i ? "" : std::to_string(patch.number), i ? "" : work,
                            i ? "" : area_text(patch.area), i ? "" : volume_text(patch.volume, 3),
                            spots[i].point, metres_text(spots[i].along_ab, 2),
                            metres_text(spots[i].across_ab, 2), signed_mm_text(spots[i].move)});
    if (!patch.note.empty())
      table.notes.push_back("No. " + std::to_string(patch.number) + ": " + patch.note);
  }
  return table;
}

Table hole_table(const base::BaseResult& base) {
  Table table{"Places without a point near: survey here too",
              {figures_column("along A-B"), figures_column("in"), figures_column("radius, m")},
              {},
              {}};
  for (const auto& hole : base.holes)
    table.rows.push_back({metres_text(hole.along_ab, 2), metres_text(hole.across_ab, 2),
                          metres_text(hole.radius, 2)});
  return table;
}

Table compaction_table(const base::BaseResult& base) {
  Table table{"Compaction of the formation",
              {words_column("layer"), figures_column("easting"), figures_column("northing"),
               figures_column("ratio"), words_column("answer")},
              {},
              {}};
  for (const auto& test : base.compaction)
    table.rows.push_back({test.layer, easting_text(test.at), northing_text(test.at),
                          fixed(test.ratio.in_percent(), 1) + " %", words(test.verdict)});
  return table;
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const auto& name : names) text += (text.empty() ? "" : ", ") + name;
  return text.empty() ? "none" : text;
}

}  // namespace

std::string base_verdict(const base::BaseResult& base) {
  std::string text = std::string("The base ") + (base.verdict == Verdict::NotProven ? "is " : "") +
                     words(base.verdict) + ".";
  return text;
}

Table check_table(const base::BaseResult& base) { return checks_as("Checks", base.checks); }

std::vector<Row> base_rows(const base::BaseResult& base) {
  std::vector<Row> rows;
  if (base.deviation) {
    rows.push_back({"mean deviation", signed_mm_text(base.deviation->mean) + " mm"});
    if (base.deviation->area_mean)
      rows.push_back({"mean over the area", signed_mm_text(base.deviation->area_mean) + " mm"});
    rows.push_back({"root mean square", mm_text(base.deviation->rms) + " mm"});
  }
  if (base.best_plane) {
    rows.push_back({"best plane, level at A", level_text(base.best_plane->level_at_a)});
    rows.push_back({"best plane, fall", fixed(base.best_plane->fall.in_percent(), 3) + " %"});
    rows.push_back({"best plane, downhill", bearing_text(base.best_plane->downhill)});
  }
  if (base.flatness)
    rows.push_back({"flatness, minimum zone", mm_text(base.flatness->minimum_zone) + " mm"});
  if (base.skin) {
    rows.push_back({"bedding, thinnest", mm_text(base.skin->thinnest) + " mm"});
    rows.push_back({"bedding, thickest", mm_text(base.skin->thickest) + " mm"});
    rows.push_back({"bedding under the tank", volume_text(base.skin->volume, 2)});
    rows.push_back({"bedding wall to wall", volume_text(base.skin->wall_to_wall, 2)});
    rows.push_back({"tank level shift that fits",
                    base.skin->shift_that_fits
                        ? signed_mm_text(base.skin->shift_that_fits->first) + " to " +
                              signed_mm_text(base.skin->shift_that_fits->second) + " mm"
                        : "none"});
  }
  if (base.trim) rows.push_back({"to trim, in the ground", volume_text(*base.trim, 2)});
  if (base.make_up) rows.push_back({"to make up", volume_text(*base.make_up, 2)});
  rows.push_back({"floor", area_text(base.floor_area)});
  return rows;
}

std::vector<Table> base_tables(const base::BaseResult& base) {
  std::vector<Table> tables;
  if (!base.repair.empty()) tables.push_back(repair_table(base));
  if (!base.holes.empty()) tables.push_back(hole_table(base));
  if (!base.compaction.empty()) tables.push_back(compaction_table(base));
  if (base.before) {
    tables.push_back(checks_as("Checks before the repair", base.before->checks));
    tables.back().notes = {"Put right by the repair: " + joined(base.before->fixed) + ".",
                           "Still open: " + joined(base.before->not_fixed) + "."};
  }
  return tables;
}

Table point_table(const base::BaseResult& base) {
  Table table{
      "Points",
      {words_column("point"), figures_column("along A-B"), figures_column("in"),
       figures_column("level"), figures_column("dig level"), figures_column("deviation, mm"),
       figures_column("bedding, mm"), words_column("answer")},
      {},
      {}};
  for (const auto& p : base.points)
    table.rows.push_back({p.point, metres_text(p.along_ab, 2), metres_text(p.across_ab, 2),
                          level_text(p.at.height), level_text(p.dig_level),
                          signed_mm_text(p.deviation), mm_text(p.bedding), words(p.verdict)});
  for (const auto& p : base.aside) table.notes.push_back("Set aside: " + p.point + ", " + p.why);
  return table;
}

}  // namespace squaredig::report
