// [ground], [site]
#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

void check_surface(TableReader& table, Job& job) {
  table.exclude("points", "surface", "points to be triangulated, or a ready surface");
  table.exclude("breaklines", "surface",
                "breaklines with points, as a ready surface has its own edges");
  table.exclude("outline", "surface",
                "an outline with points, as a ready surface has its own edge");
  if (!table.has("surface")) return;
  for (const char* unused : {"codes", "longest_edge"})
    if (table.has(unused))
      job.assumed.push_back(std::string(unused) +
                            ": not used, as the ground is a ready surface, taken as it stands");
}

}  // namespace

void read_ground(TableReader& root, Job& job) {
  const Node* node = root.table("ground");
  if (!node) return;
  TableReader table(*node, root.faults());
  GroundTable ground;
  ground.place = table.place();
  ground.surface = table.may("surface", file());
  const bool points = !table.has("surface");
  ground.points = table.need_if(points, "points", files()).value_or(std::vector<FileSpec>{});
  ground.breaklines = table.may("breaklines", files()).value_or(std::vector<FileSpec>{});
  ground.outline = table.may("outline", file());
  ground.codes = table.may("codes", list_of(text())).value_or(std::vector<std::string>{});
  ground.settings.longest_edge = table.need_if(points, "longest_edge", metres(kPlanLength));
  ground.settings.sigma_height = table.need_if(points, "sigma_height_mm", millimetres(kSigma));
  ground.settings.sigma_common = table.need_if(points, "sigma_common_mm", millimetres(kSigma));
  table.finish();
  check_surface(table, job);
  job.ground = std::move(ground);
}

void read_site(TableReader& root, Job& job) {
  const Node* node = root.table("site");
  if (!node) return;
  TableReader table(*node, root.faults());
  SiteTable site;
  site.settings.place = table.place();
  site.keep_out = table.may("keep_out", files()).value_or(std::vector<FileSpec>{});
  site.services = table.may("services", files()).value_or(std::vector<FileSpec>{});
  site.settings.clearance = table.need_if(table.has("services"), "clearance", metres({0, 100}));
  site.settings.influence = table.may("influence", batter());
  table.finish();
  job.site = std::move(site);
}

}  // namespace squaredig::job
