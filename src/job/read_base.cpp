// [base]
#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

// A table of its own as one value; `fill` takes the reader of it.
template <class T, class Fill>
Rule<T> inner_table(std::string words, Fill fill) {
  return {words, [=](const Node& node, Faults& faults) -> std::optional<T> {
            if (node.kind != Node::Kind::Table) {
              faults.wrong_value(node, words, "write the keys in braces");
              return std::nullopt;
            }
            TableReader table(node, faults);
            T value = fill(table);
            table.finish();
            return value;
          }};
}

Rule<Tolerance> high_and_low() {
  return inner_table<Tolerance>(
      "{ high = ..., low = ... } in millimetres, both typed positive", [](TableReader& t) {
        return Tolerance{t.need("high", tolerance_mm()), t.need("low", tolerance_mm())};
      });
}

Rule<base::Straightedge> straightedge() {
  return inner_table<base::Straightedge>(
      "{ length = ..., tolerance_mm = ... }", [](TableReader& t) {
        return base::Straightedge{t.need("length", metres(kHeight)),
                                  t.need("tolerance_mm", tolerance_mm())};
      });
}

void read_tolerances(TableReader& table, const Job& job, base::BaseInput& base) {
  const bool units = job.tank && job.tank->settings.module;
  base.level_tolerance = table.need_if(true, "level_tolerance_mm", high_and_low());
  base.mean_tolerance = table.need_if(true, "mean_tolerance_mm", tolerance_mm());
  base.flatness_tolerance = table.need_if(true, "flatness_tolerance_mm", tolerance_mm());
  base.straightedge = table.need_if(true, "straightedge", straightedge());
  base.stack_gap_tolerance = table.need_if(units, "stack_gap_tolerance_mm", tolerance_mm());
  base.fall_tolerance = table.need_if(true, "fall_tolerance_percent", fall_percent());
  base.extent_tolerance =
      table.need_if(table.has("toe_codes"), "extent_tolerance_mm", tolerance_mm());
  base.spacing = table.need_if(true, "spacing", metres(kHeight));
  base.sigma_height = table.need("sigma_height_mm", millimetres(kSigma));
  base.sigma_plan = table.need("sigma_plan_mm", millimetres(kSigma));
  base.sigma_common = table.need("sigma_common_mm", millimetres(kSigma));
  base.confidence = table.need("confidence", ratio("a probability", {0.5, 1, Ends::Between}));
  base.least_repair = table.need_if(
      true, "least_repair_m2", made<Area>(number("square metres", {0, 1e6}), Area::square_metres));
}

void check_codes(TableReader& table, const base::BaseInput& base) {
  for (const std::string& code : base.toe_codes)
    for (const std::string& other : base.codes)
      if (code == other)
        table.faults().add(table.place_of("toe_codes"),
                           "base.toe_codes with " + quoted(code) + ", which is among codes",
                           "codes of the toe that no base point has",
                           "take it out of one of the two");
}

void check_after_repair(TableReader& table, const BaseTable& base) {
  if (base.settings.after_repair_surveyed && base.after_repair.empty())
    table.faults().add(table.place_of("after_repair_surveyed"),
                       "base.after_repair_surveyed without base.after_repair",
                       "the survey whose time it is", "add after_repair, or take it out");
}

}  // namespace

void read_base(TableReader& root, Job& job) {
  const Node* node = root.table("base");
  if (!node) return;
  TableReader table(*node, root.faults());
  auto& base = job.base.emplace();
  auto& s = base.settings;
  s.place = table.place();
  base.points = table.need("points", files());
  s.codes = table.need("codes", list_of(text()));
  s.toe_codes = table.may("toe_codes", list_of(text())).value_or(std::vector<std::string>{});
  s.surveyed = table.may("surveyed", text());
  read_tolerances(table, job, s);
  base.after_repair = table.may("after_repair", files()).value_or(std::vector<FileSpec>{});
  s.after_repair_surveyed = table.may("after_repair_surveyed", text());
  base.tests = table.may("tests", file());
  base.bedding_points = table.may("bedding_points", files()).value_or(std::vector<FileSpec>{});
  table.finish();
  check_codes(table, s);
  check_after_repair(table, base);
}

}  // namespace squaredig::job
