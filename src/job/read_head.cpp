// [job], [grid], [control]
#include <charconv>

#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

// An EPSG code, or nothing for local coordinates.
using Crs = std::optional<int>;

std::optional<Crs> parse_crs(std::string_view text) {
  if (text == "local") return Crs{};
  constexpr std::string_view kAuthority = "EPSG:";
  if (text.substr(0, kAuthority.size()) != kAuthority) return std::nullopt;
  text.remove_prefix(kAuthority.size());
  int code = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), code);
  const bool digits =
      !text.empty() && text.size() <= 7 && text.front() >= '1' && text.front() <= '9';
  if (!digits || error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return Crs{code};
}

Rule<Crs> crs(const std::string& what, const char* such_as) {
  const std::string words = what + " as \"EPSG:\" and its number, or \"local\"";
  return {words, [=](const Node& node, Faults& faults) {
            std::optional<Crs> read;
            if (node.kind == Node::Kind::Text) read = parse_crs(node.text);
            if (!read) faults.wrong_value(node, words, std::string("write such as ") + such_as);
            return read;
          }};
}

}  // namespace

void read_job_table(TableReader& root, Job& job) {
  const Node* node = root.table("job");
  if (!node) {
    if (!root.has("job"))
      root.faults().add(root.place(), "no table [job]", "[job] with name and out",
                        "add it at the top of the file");
    return;
  }
  TableReader table(*node, root.faults());
  job.job.place = table.place();
  job.job.name = table.need("name", text());
  job.job.out = table.need("out", out_folder());
  job.job.date = table.may("date", date());
  job.job.revision = table.may("revision", text());
  job.job.drawing = table.may("drawing", text());
  job.job.prepared_by = table.may("prepared_by", text());
  table.finish();
  if (!job.job.date)
    job.assumed.push_back("date: 1970-01-01 in files that need one, as [job] gives none");
}

namespace {

GridTable grid_of(TableReader& table) {
  GridTable grid;
  grid.place = table.place();
  grid.crs = table.need("crs", crs("a projected reference system", "\"EPSG:2157\""));
  grid.heights = table.need("heights", crs("a height reference system", "\"EPSG:5731\""));
  grid.geoid = table.may("geoid", plain_file());
  const auto lengths = table.may(
      "plan_lengths", one_of<design::PlanLengths>({{"grid", design::PlanLengths::Grid},
                                                   {"ground", design::PlanLengths::Ground}}));
  grid.plan_lengths = lengths.value_or(design::PlanLengths::Grid);
  grid.scale_factor =
      table.may("scale_factor", ratio("the combined factor grid / ground", {0.99, 1.01}));
  table.finish();
  return grid;
}

void tell_of_grid(const GridTable& grid, const TableReader& table, Job& job) {
  if (!grid.crs && table.has("crs"))
    job.cautions.push_back(
        "crs = \"local\": coordinates of files in any reference system are taken as they stand");
  if (!grid.heights && table.has("heights"))
    job.cautions.push_back(
        "heights = \"local\": heights of files in any reference system are taken as they stand");
  if (!table.has("plan_lengths"))
    job.assumed.push_back(
        "plan_lengths: \"grid\", as [grid] does not say: lengths of the job file "
        "are taken as grid lengths");
}

void refuse_contradictions(const GridTable& grid, const TableReader& table, Faults& faults) {
  if (grid.scale_factor && grid.plan_lengths == design::PlanLengths::Grid)
    faults.add(table.place_of("scale_factor"), "[grid] with scale_factor but grid lengths",
               "scale_factor only with plan_lengths = \"ground\"",
               "delete scale_factor, or say that plan lengths are ground lengths");
  if (!grid.scale_factor && !grid.crs && !table.has("scale_factor") &&
      grid.plan_lengths == design::PlanLengths::Ground)
    faults.add(table.place_of("plan_lengths"), "ground lengths on a local grid",
               "scale_factor, as a local grid has none to compute", "add scale_factor");
  if (grid.geoid && !grid.crs && table.has("crs"))
    faults.add(table.place_of("geoid"), "a geoid on a local grid",
               "a geoid only with crs = \"EPSG:...\"", "delete geoid, or state the crs");
}

}  // namespace

void read_grid(TableReader& root, Job& job) {
  const Node* node = root.table("grid");
  if (!node) return;
  TableReader table(*node, root.faults());
  job.grid = grid_of(table);
  tell_of_grid(*job.grid, table, job);
  refuse_contradictions(*job.grid, table, root.faults());
}

void read_control(TableReader& root, Job& job) {
  const Node* node = root.table("control");
  if (!node) return;
  TableReader table(*node, root.faults());
  ControlTable control;
  control.place = table.place();
  control.points = table.need("points", file());
  table.finish();
  job.control = std::move(control);
}

}  // namespace squaredig::job
