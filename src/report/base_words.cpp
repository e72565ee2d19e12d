#include "report/base_words.h"

#include <algorithm>
#include <span>

#include "quantity/number_text.h"

namespace squaredig::report {
namespace {

constexpr std::size_t kMostShown = 12;    // of the largest first
constexpr std::size_t kMostListed = 500;  // rows of points a person may be given

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

Table checks_as(const std::vector<base::Check>& checks) {
  Table table{"Checks",
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

const char* work_words(base::Work work) { return work == base::Work::Trim ? "trim" : "make up"; }

// "3.10 to 5.25"
std::string reach_text(const std::pair<Length, Length>& reach) {
  return metres_text(reach.first, 2) + " to " + metres_text(reach.second, 2);
}

// "4.20 along A-B, 1.75 in"
std::string tied_text(Length along, Length in) {
  return metres_text(along, 2) + " along A-B, " + metres_text(in, 2) + " in";
}

Table patch_table(const base::BaseResult& base) {
  Table table{"Repair list, tied to string A-B",
              {words_column("no."), words_column("work"), words_column("by"),
               figures_column("area"), figures_column("volume"), figures_column("along A-B"),
               figures_column("in"), words_column("deepest at"), figures_column("move, mm")},
              {},
              {"Along A-B from A, then square to it into the tank. Move: the correction, down is "
               "negative. Area: what is worked; each point of it stands below."}};
  for (const auto& patch : base.repair) {
    table.rows.push_back(
        {std::to_string(patch.number), work_words(patch.work), patch.by_hand ? "hand" : "machine",
         area_text(patch.area), volume_text(patch.volume, 3), reach_text(patch.along_ab),
         reach_text(patch.across_ab), tied_text(patch.deepest.along_ab, patch.deepest.across_ab),
         signed_mm_text(patch.deepest.move)});
    if (!patch.note.empty())
      table.notes.push_back("No. " + std::to_string(patch.number) + ": " + patch.note + ".");
  }
  return table;
}

Table spot_table(const base::BaseResult& base) {
  Table table{"Points to put right, deepest first",
              {words_column("no."), words_column("work"), words_column("point"),
               words_column("where"), figures_column("move, mm")},
              {},
              {}};
  for (const auto& patch : base.repair)
    for (const auto& spot : patch.spots)
      if (table.rows.size() < kMostListed)
        table.rows.push_back({std::to_string(patch.number), work_words(patch.work), spot.point,
                              tied_text(spot.along_ab, spot.across_ab), signed_mm_text(spot.move)});
  if (table.rows.size() == kMostListed) table.notes.push_back("repair.csv lists all.");
  return table;
}

Table skin_table(const base::Skin& skin) {
  Table table{"Where the bedding leaves its least or most",
              {words_column("bedding"), figures_column("area"), words_column("worst at"),
               figures_column("bedding there, mm")},
              {},
              {"Level of the tank: " + skin.shift_words + "."}};
  const auto rows = [&](const char* word, const auto& patches) {
    if (!patches) return;
    if (patches->size() > kMostShown)
      table.notes.push_back("Of " + std::to_string(patches->size()) + " places " + word +
                            " the largest; base.json holds all.");
    for (const auto& patch : std::span(*patches).first(std::min(kMostShown, patches->size())))
      table.rows.push_back({word, area_text(patch.area), tied_text(patch.along_ab, patch.across_ab),
                            mm_text(patch.worst)});
  };
  rows("too thin", skin.too_thin);
  rows("too thick", skin.too_thick);
  return table;
}

std::string unit_text(int column, int row) {
  return "column " + std::to_string(column) + " row " + std::to_string(row);
}

Table joint_table(const base::StackGap& gap) {
  Table table{"Joints between stacks that open most",
              {words_column("between"), words_column("and"), figures_column("gap, mm"),
               words_column("open at the")},
              {},
              {std::to_string(gap.listed.size()) + " of " + std::to_string(gap.joints.size()) +
               " joints over " + mm_text(gap.listed_over) + " mm; on " + gap.on + "."}};
  for (const auto& joint : gap.listed) {
    if (table.rows.size() == kMostShown) {
      table.notes.push_back("The others stand in base.json.");
      break;
    }
    table.rows.push_back({unit_text(joint.column, joint.row),
                          unit_text(joint.to_column, joint.to_row), mm_text(abs(joint.opening)),
                          joint.opening > Length{} ? "top" : "bottom"});
  }
  return table;
}

Table seen_table(const base::SurveyReach& reach) {
  Table table{
      "What the survey saw of the floor's edge",
      {words_column("corner or side"), words_column("seen"), figures_column("nearest point, m"),
       figures_column("not seen, m"), words_column("longest stretch not seen")},
      {},
      {"Seen: a point lies within " + metres_text(reach.limit, 3) + " m."}};
  for (const auto& corner : reach.corners)
    table.rows.push_back({"corner by " + corner.name, corner.seen ? "yes" : "no",
                          metres_text(corner.nearest, 2), "", ""});
  for (const auto& side : reach.sides) {
    const bool seen = side.unseen == Length{};
    table.rows.push_back({"side by " + side.name, seen ? "yes" : "no", "",
                          seen ? "" : metres_text(side.unseen, 2),
                          seen ? "" : reach_text({side.from, side.to}) + " along it"});
  }
  for (const auto& part : reach.far_parts)
    table.notes.push_back(
        area_text(part.area) + " farther than the spacing from every point, worst " +
        metres_text(part.distance, 2) + " m at " + tied_text(part.along_ab, part.across_ab) + ".");
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
  Table table{"Compaction of the base",
              {words_column("layer"), figures_column("easting"), figures_column("northing"),
               figures_column("ratio"), words_column("answer")},
              {},
              {}};
  for (const auto& test : base.compaction)
    table.rows.push_back({test.layer, easting_text(test.at), northing_text(test.at),
                          fixed(test.ratio.in_percent(), 1) + " %", words(test.verdict)});
  return table;
}

bool all_seen(const base::SurveyReach& reach) {
  return reach.far_parts.empty() &&
         std::all_of(reach.corners.begin(), reach.corners.end(),
                     [](const auto& corner) { return corner.seen; }) &&
         std::all_of(reach.sides.begin(), reach.sides.end(),
                     [](const auto& side) { return side.unseen == Length{}; });
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const auto& name : names) text += (text.empty() ? "" : ", ") + name;
  return text.empty() ? "none" : text;
}

Table before_table(const base::BaseResult& base) {
  const base::BeforeRepair& before = *base.before;
  Table table{"Before and after the repair",
              {words_column("check"), figures_column("before"), words_column("answer"),
               figures_column("after"), words_column("answer")},
              {},
              {"Put right by the repair: " + joined(before.fixed) + ".",
               "Still open: " + joined(before.not_fixed) + "."}};
  if (before.surveyed) table.notes.push_back("First surveyed " + *before.surveyed + ".");
  if (!before.spoiled.empty())
    table.notes.push_back("Spoiled since: " + joined(before.spoiled) + ".");
  for (std::size_t i = 0; i < before.checks.size() && i < base.checks.size(); ++i)
    table.rows.push_back(
        {before.checks[i].name, amount_text(before.checks[i].value, before.checks[i]),
         words(before.checks[i].verdict), amount_text(base.checks[i].value, base.checks[i]),
         words(base.checks[i].verdict)});
  return table;
}

Table patch_after_table(const base::BeforeRepair& before) {
  Table table{"The first survey's repair list, looked at again",
              {words_column("no."), words_column("work"), words_column("deepest at"),
               figures_column("move, mm"), words_column("now"), words_column("worst point now"),
               figures_column("deviation, mm")},
              {},
              {}};
  for (const auto& after : before.patches) {
    const auto& patch = after.patch;
    table.rows.push_back({std::to_string(patch.number), work_words(patch.work),
                          tied_text(patch.deepest.along_ab, patch.deepest.across_ab),
                          signed_mm_text(patch.deepest.move),
                          after.verdict ? words(*after.verdict) : "not measured again", after.point,
                          after.verdict ? signed_mm_text(after.deviation) : ""});
  }
  return table;
}

void add_level_rows(const base::BaseResult& base, std::vector<Row>& rows) {
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
}

void add_skin_rows(const base::Skin& skin, std::vector<Row>& rows) {
  rows.push_back({"bedding, thinnest", mm_text(skin.thinnest) + " mm"});
  rows.push_back({"bedding, thickest", mm_text(skin.thickest) + " mm"});
  rows.push_back({"bedding under the tank", volume_text(skin.volume, 2)});
  rows.push_back({"bedding wall to wall", volume_text(skin.wall_to_wall, 2)});
  rows.push_back({"tank level shift that fits",
                  skin.shift_that_fits ? signed_mm_text(skin.shift_that_fits->first) + " to " +
                                             signed_mm_text(skin.shift_that_fits->second) + " mm"
                                       : "none"});
  for (const auto& invert : skin.inverts)
    rows.push_back(
        {"invert " + invert.name + " with it, planned " + level_text(invert.planned),
         fixed(invert.at_from.in_metres(), 4) + " to " + fixed(invert.at_to.in_metres(), 4)});
}

}  // namespace

std::string base_verdict(const base::BaseResult& base) {
  std::string text = std::string("The base ") + (base.verdict == Verdict::NotProven ? "is " : "") +
                     words(base.verdict) + ".";
  return text;
}

Table check_table(const base::BaseResult& base) { return checks_as(base.checks); }

std::vector<Row> base_rows(const base::BaseResult& base) {
  std::vector<Row> rows;
  add_level_rows(base, rows);
  if (base.skin) add_skin_rows(*base.skin, rows);
  if (base.trim) rows.push_back({"to trim, in the ground", volume_text(*base.trim, 2)});
  if (base.make_up) rows.push_back({"to make up", volume_text(*base.make_up, 2)});
  rows.push_back({"floor", area_text(base.floor_area)});
  if (base.widest_hole)
    rows.push_back(
        {"largest hole in the survey, radius", metres_text(base.widest_hole->radius, 2) + " m"});
  if (base.verdict_without_outliers)
    rows.push_back(
        {"the base without the points that stand alone", words(*base.verdict_without_outliers)});
  if (base.reach)
    rows.push_back(
        {"corners and sides of the floor", all_seen(*base.reach) ? "all seen" : "not all seen"});
  return rows;
}

std::vector<Table> base_tables(const base::BaseResult& base) {
  std::vector<Table> tables;
  if (base.before) {
    tables.push_back(before_table(base));
    if (!base.before->patches.empty()) tables.push_back(patch_after_table(*base.before));
  }
  if (!base.repair.empty()) {
    tables.push_back(patch_table(base));
    tables.push_back(spot_table(base));
  }
  if (base.skin && !skin_table(*base.skin).rows.empty()) tables.push_back(skin_table(*base.skin));
  if (base.stack_gap && base.stack_gap->widest) tables.push_back(joint_table(*base.stack_gap));
  if (base.reach && !all_seen(*base.reach)) tables.push_back(seen_table(*base.reach));
  if (!base.holes.empty()) tables.push_back(hole_table(base));
  if (!base.compaction.empty()) tables.push_back(compaction_table(base));
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
  const bool all = base.points.size() <= kMostListed;
  for (const auto& p : base.points) {
    const bool told = p.verdict == Verdict::DoesNotConform || p.verdict == Verdict::NotProven;
    if (!all && (!told || table.rows.size() == kMostListed)) continue;
    table.rows.push_back({p.point, metres_text(p.along_ab, 2), metres_text(p.across_ab, 2),
                          level_text(p.at.height), level_text(p.dig_level),
                          signed_mm_text(p.deviation), mm_text(p.bedding), words(p.verdict)});
  }
  if (!all)
    table.notes.push_back(
        "Of " + std::to_string(base.points.size()) + " points the first " +
        std::to_string(table.rows.size()) +
        " that are outside or not proven; base.csv lists all, those set aside too.");
  if (!all) return table;
  for (const auto& p : base.aside) table.notes.push_back("Set aside: " + p.point + ", " + p.why);
  return table;
}

}  // namespace squaredig::report
