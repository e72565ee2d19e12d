#include "app/summary.h"

#include <algorithm>

#include "quantity/number_text.h"

namespace squaredig::app {
namespace {

// "ground  ..." with the stage's name in a column of its own; further lines are indented.
Lines under(const std::string& name, const Lines& told) {
  constexpr std::size_t kColumn = 8;
  Lines lines;
  for (const auto& line : told) {
    std::string label = lines.empty() ? name : "";
    label.resize(kColumn, ' ');
    lines.push_back(label + line);
  }
  return lines;
}

std::string metres(Length v, int decimals) { return fixed(v.in_metres(), decimals) + " m"; }
std::string level(Elevation v) { return fixed(v.in_metres(), 3); }
std::string square_metres(Area v) { return fixed(v.in_square_metres(), 1) + " m2"; }
template <class AnyVolume>
std::string cubic_metres(AnyVolume v, int decimals = 1) {
  return fixed(v.in_cubic_metres(), decimals) + " m3";
}
std::string signed_mm(Length v) {
  const std::string text = fixed(v.in_millimetres(), 1);
  return (v > Length{} && text != "0.0" ? "+" : "") + text + " mm";
}

std::string count(std::size_t n, const std::string& one, const std::string& many) {
  return std::to_string(n) + " " + (n == 1 ? one : many);
}

std::string findings_of(const ResultHead& head) {
  return head.findings.empty() ? "" : "; " + count(head.findings.size(), "finding", "findings");
}

std::string amount(const base::Check& check, const base::Amount& amount) {
  // levels lie above or below; a flatness, a gap or a thickness has no side
  const bool has_side = check.name.starts_with("level");
  if (const auto* length = std::get_if<Length>(&amount))
    return has_side ? signed_mm(*length) : fixed(length->in_millimetres(), 1) + " mm";
  if (const auto* fall = std::get_if<Fall>(&amount)) return fixed(fall->in_percent(), 3) + " %";
  return fixed(std::get<Ratio>(amount).in_percent(), 1) + " %";
}

// "level high +18.6 mm (limit +5.0 mm)"
std::string told(const base::Check& check) {
  std::string text = check.name;
  if (check.value) text += " " + amount(check, *check.value);
  if (check.limit) text += " (limit " + amount(check, *check.limit) + ")";
  return text;
}

std::string joined(const Lines& parts, const std::string& between) {
  std::string text;
  for (const auto& part : parts) text += (text.empty() ? "" : between) + part;
  return text;
}

Lines checks_with(const base::BaseResult& result, Verdict verdict) {
  Lines names;
  for (const auto& check : result.checks)
    if (check.verdict == verdict)
      names.push_back(verdict == Verdict::DoesNotConform ? told(check) : check.name);
  return names;
}

// "4.00 m", or "3.34 to 3.74 m" where they differ.
std::string beyond_corners(const std::vector<pegs::ReferencePeg>& pegs) {
  const auto [near, far] = std::minmax_element(
      pegs.begin(), pegs.end(),
      [](const auto& a, const auto& b) { return a.beyond_corner < b.beyond_corner; });
  const std::string from = fixed(near->beyond_corner.in_metres(), 2);
  const std::string to = metres(far->beyond_corner, 2);
  return from + " m" == to ? to : from + " to " + to;
}

// A point's place as the crew finds it from the strings.
std::string place(const base::JudgedPoint& point) {
  return point.point + ", " + fixed(point.along_ab.in_metres(), 2) + " along A-B and " +
         fixed(point.across_ab.in_metres(), 2) + " in";
}

std::string extremes(const base::BaseResult& result) {
  if (result.points.empty() || !result.deviation) return "no point was judged";
  const auto [low, high] =
      std::minmax_element(result.points.begin(), result.points.end(),
                          [](const auto& a, const auto& b) { return a.deviation < b.deviation; });
  return "highest " + signed_mm(high->deviation) + " at " + place(*high) + "; lowest " +
         signed_mm(low->deviation) + " at " + place(*low);
}

std::string repair(const base::BaseResult& result) {
  if (!result.trim || !result.make_up) return "";
  return "; trim " + cubic_metres(*result.trim, 2) + ", make up " +
         cubic_metres(*result.make_up, 2);
}

// What a second survey found put right, and what not.
std::string since_repair(const base::BeforeRepair& before) {
  const auto names = [](const Lines& all) { return all.empty() ? "none" : joined(all, ", "); };
  std::string text = std::string("before the repair: ") + words(before.verdict) +
                     "; fixed: " + names(before.fixed) + "; not fixed: " + names(before.not_fixed);
  if (!before.spoiled.empty()) text += "; spoiled: " + names(before.spoiled);
  return text;
}

}  // namespace

Lines summary_of(const ground::GroundResult& result) {
  return under("ground", {count(result.points, "point", "points") + ", " +
                          count(result.triangles, "triangle", "triangles") + " over " +
                          square_metres(result.plan_area) + ", levels " + level(result.lowest) +
                          " to " + level(result.highest) + findings_of(result.head)});
}

Lines summary_of(const field::FieldResult& result) {
  const std::string from = !result.setups.empty() ? count(result.setups.size(), "set-up", "set-ups")
                           : result.gnss          ? "GNSS"
                                                  : "the level book";
  Lines told = {count(result.points.size(), "point", "points") + " reduced from " + from +
                findings_of(result.head)};
  if (!result.withheld.empty())
    told.push_back(count(result.withheld.size(), "point", "points") + " without coordinates");
  if (result.levels)
    for (const auto& run : result.levels->runs)
      if (run.misclosure)
        told.push_back(
            "levels " + run.from + " to " + run.to + ": misclosure " +
            fixed(run.misclosure->in_millimetres(), 1) + " mm" +
            (run.allowed ? ", allowed " + fixed(run.allowed->in_millimetres(), 1) + " mm" : ""));
  return under("field", told);
}

Lines summary_of(const pegs::PegsResult& result) {
  if (result.reference.empty())
    return under("pegs", {"no reference peg has room" + findings_of(result.head)});
  const auto& tightest = *std::min_element(
      result.reference.begin(), result.reference.end(),
      [](const auto& a, const auto& b) { return a.nearest_crest < b.nearest_crest; });
  std::string text = count(result.reference.size(), "reference peg", "reference pegs") + ", " +
                     beyond_corners(result.reference) +
                     " beyond their corners; nearest to the crest " + tightest.name + ", " +
                     metres(tightest.nearest_crest, 2);
  if (result.as_set) text += "; as set: " + std::string(words(result.as_set->verdict));
  if (result.tape) text += "; taped: " + std::string(words(result.tape->verdict));
  return under("pegs", {text + findings_of(result.head)});
}

Lines summary_of(const dig::DigResult& result) {
  std::string volume = cubic_metres(result.cut) + " in the ground";
  if (result.uncertainty) volume += " (sigma " + cubic_metres(result.uncertainty->sigma) + ")";
  if (result.loose) volume += ", " + cubic_metres(*result.loose) + " loose";
  if (result.truckloads)
    volume += ", " + count(static_cast<std::size_t>(*result.truckloads), "load", "loads");
  return under("dig",
               {volume + findings_of(result.head),
                "deepest cut " + metres(result.deepest_cut, 2) + ", mean " +
                    metres(result.mean_cut, 2) + "; floor " + square_metres(result.floor_area) +
                    ", crest " + square_metres(result.crest_area) + "; second method differs by " +
                    fixed(std::abs(result.closure.difference.in_cubic_metres()), 6) + " m3"});
}

Lines summary_of(const base::BaseResult& result) {
  const auto open = checks_with(result, Verdict::NotProven);
  Lines lines = {words(result.verdict) + std::string(": ") +
                 count(result.points.size(), "point", "points") + " judged" +
                 (open.empty() ? "" : "; not proven: " + joined(open, ", ")) + "; " +
                 extremes(result) + repair(result) + findings_of(result.head)};
  if (const auto failed = checks_with(result, Verdict::DoesNotConform); !failed.empty())
    lines.push_back("outside: " + joined(failed, "; "));
  if (result.before) lines.push_back(since_repair(*result.before));
  return under("base", lines);
}

Lines summary_of(const fill::FillResult& result) {
  CompactedVolume capping;
  for (const auto& layer : result.capping) capping += layer.placed;
  std::string told = "bedding " + cubic_metres(result.bedding) + ", special side fill " +
                     cubic_metres(result.special) + ", side fill " + cubic_metres(result.side) +
                     ", capping " + cubic_metres(capping) + ", finish " +
                     cubic_metres(result.finish) + ", placed; all fills differ from the cut by " +
                     cubic_metres(result.closure.difference, 9);
  if (!result.uplift.empty() && result.uplift.front().ratio)
    told += "; uplift screening: ratio " + fixed(*result.uplift.front().ratio, 2) +
            " before it is covered, " + fixed(*result.uplift.back().ratio, 2) + " finished";
  return under("fill", {told + findings_of(result.head)});
}

Lines summary_of(const record::RecordResult& result) {
  const auto& storage = result.storage;
  std::string text = "storage " + cubic_metres(storage.net.value_or(storage.gross)) +
                     (storage.net ? " net" : " gross");
  if (storage.below_outlet)
    text += ", " + cubic_metres(*storage.below_outlet) + " below the outlet";
  for (const auto& stage : result.stages) text += "; " + stage.done + ": " + stage.verdict;
  return under("record", {text});
}

Lines remarks_of(const ResultHead& head) {
  Lines lines;
  for (const auto& finding : head.findings) lines.push_back("finding: " + finding.text);
  for (const auto& caution : head.cautions) lines.push_back("caution: " + caution);
  return lines;
}

}  // namespace squaredig::app
