#include "job/left_out.h"

namespace squaredig::job {
namespace {

struct Omission {
  bool absent;
  const char* words;
};

std::vector<std::string> those_absent(std::initializer_list<Omission> omissions) {
  std::vector<std::string> phrases;
  for (const Omission& o : omissions)
    if (o.absent) phrases.emplace_back(o.words);
  return phrases;
}

std::vector<std::string> of_pegs(const Job& job) {
  const auto& pegs = *job.pegs;
  return those_absent({{pegs.settings.stations.empty(), "no polar schedule (stations)"},
                       {!pegs.as_set, "pegs as set are not checked (as_set)"},
                       {!pegs.tape, "no taped lengths are checked (tape)"},
                       {!job.laser, "no staff readings ([laser])"}});
}

std::vector<std::string> of_dig(const Job& job) {
  const auto& dig = *job.dig;
  return those_absent(
      {{!dig.pit.batter_given_by, "nobody is named for the batter (batter_given_by)"},
       {!dig.settings.bulking, "no loose volume (bulking)"},
       {!dig.settings.truck && !dig.settings.truck_mass, "no truckloads (truck_m3, truck_t)"},
       {!job.site, "nothing to keep clear of ([site])"},
       {!job.laser, "no staff readings ([laser])"},
       {job.progress.empty(), "no progress ([progress])"}});
}

std::vector<std::string> of_base(const Job& job) {
  const auto& base = *job.base;
  return those_absent(
      {{!job.tank->settings.module, "stack gap is not asked ([tank] module)"},
       {base.settings.toe_codes.empty(), "extent is not asked (toe_codes)"},
       {!base.tests, "compaction is not asked (tests)"},
       {base.tests && !base.settings.density_ratio,
        "compaction is not asked ([fill] density_ratio_percent)"},
       {base.bedding_points.empty(), "bedding as laid is not looked at (bedding_points)"},
       {base.after_repair.empty(), "no survey after repair (after_repair)"}});
}

std::vector<std::string> of_fill(const Job& job) {
  const auto& fill = *job.fill;
  return those_absent({{!fill.settings.placed_density, "no tonnes (t_per_m3)"},
                       {fill.layers.empty(), "no layers as built (layers)"},
                       {!fill.tests, "compaction is not asked (tests)"},
                       {!fill.settings.least_cover, "cover is not asked (least_cover)"},
                       {!job.water, "no screening of uplift ([water])"}});
}

}  // namespace

std::vector<std::string> left_out(Stage stage, const Job& job) {
  if (!missing_for(stage, job).empty()) return {};
  switch (stage) {
    case Stage::Pegs:
      return of_pegs(job);
    case Stage::Dig:
      return of_dig(job);
    case Stage::Base:
      return of_base(job);
    case Stage::Fill:
      return of_fill(job);
    default:
      return {};
  }
}

}  // namespace squaredig::job
