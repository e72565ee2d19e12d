#include "job/describe.h"

#include "quantity/number_text.h"

namespace squaredig::job {
namespace {

// The number with as many of the decimals as it needs.
std::string plain(double value, int decimals) {
  std::string text = fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string m(Length length) { return plain(length.in_metres(), 4) + " m"; }
std::string mm(Length length) { return plain(length.in_millimetres(), 2) + " mm"; }
std::string m(Elevation level) { return fixed(level.in_metres(), 3) + " m"; }
std::string degrees(Bearing b) { return plain(b.in_degrees(), 6) + " degrees"; }

std::string named_crs(const std::optional<int>& epsg) {
  return epsg ? "EPSG:" + std::to_string(*epsg) : "local";
}

std::string of_grid(const GridTable& grid) {
  std::string text = "grid: " + named_crs(grid.crs) + ", heights " + named_crs(grid.heights) +
                     "; lengths here are ";
  if (grid.plan_lengths == design::PlanLengths::Grid) return text + "grid lengths";
  return text + "ground lengths, combined factor " +
         (grid.scale_factor ? shortest(grid.scale_factor->value()) : std::string("to be computed"));
}

std::string placed(const design::TankInput& tank) {
  if (tank.outline_file) return "outline from " + *tank.outline_file;
  if (!tank.outline.empty())
    return "outline of " + std::to_string(tank.outline.size()) + " corners";
  if (tank.from)
    return "placed from the line " + tank.from->line_from + " to " + tank.from->line_to;
  std::string text = "corner A ";
  if (const auto* name = std::get_if<std::string>(&*tank.corner_a))
    text += "at " + *name;
  else
    text += "given";
  return text + ", A-B " + (tank.corner_b ? "to " + *tank.corner_b : degrees(*tank.bearing_ab));
}

std::string fall(const design::TankInput& tank) {
  if (tank.fall == Fall{}) return "level";
  return "falling " + plain(tank.fall.in_percent(), 6) + " percent toward " +
         (tank.fall_toward ? "side " + *tank.fall_toward : degrees(*tank.fall_bearing));
}

std::string of_tank(const design::TankInput& tank) {
  std::string text = "tank: ";
  if (tank.length) text += m(*tank.length) + " by " + m(*tank.width) + ", ";
  text += m(tank.height) + " high, " + placed(tank) + "; underside " + m(tank.underside_level) +
          " at A, " + fall(tank);
  if (!tank.pipes.empty()) text += "; pipes: " + std::to_string(tank.pipes.size());
  if (!tank.shafts.empty()) text += "; shafts: " + std::to_string(tank.shafts.size());
  return text;
}

std::string of_bedding(const design::BeddingInput& bedding) {
  return "bedding: " + mm(bedding.thickness) + ", accepted from " + mm(*bedding.least) + " to " +
         mm(*bedding.most);
}

template <class T, class Words>
std::string per_side(const design::PerSide<T>& values, Words words) {
  if (values.all) return words(*values.all) + " on all sides";
  std::string text;
  for (const auto& [side, value] : values.by_side)
    text += (text.empty() ? "" : ", ") + side + " " + words(value);
  return text;
}

std::string of_parts(const design::PitInput& pit) {
  std::string text;
  const auto add = [&](std::size_t n, const char* what) {
    if (n > 0) text += (text.empty() ? "" : ", ") + std::string(what) + ": " + std::to_string(n);
  };
  add(pit.benches.size(), "benches");
  add(pit.ramps.size(), "ramps");
  add(pit.sumps.size(), "sumps");
  add(pit.trenches.size(), "trenches");
  return text;
}

}  // namespace

std::vector<std::string> described(const Job& job) {
  std::vector<std::string> lines;
  if (job.grid) lines.push_back(of_grid(*job.grid));
  if (job.tank) lines.push_back(of_tank(job.tank->settings));
  if (job.bedding) lines.push_back(of_bedding(*job.bedding));
  if (job.pegs)
    lines.push_back("pegs: " + m(job.pegs->settings.offset) + " beyond the corner, " +
                    m(job.pegs->settings.setback) + " clear of the crest");
  if (job.dig) {
    const auto& pit = job.dig->pit;
    lines.push_back("gap: " + per_side(pit.gap, [](Length gap) { return m(gap); }));
    lines.push_back("batter: " + per_side(pit.batter, [](Batter b) { return b.words(); }));
    if (const auto parts = of_parts(pit); !parts.empty()) lines.push_back("dig: " + parts);
  }
  return lines;
}

}  // namespace squaredig::job
