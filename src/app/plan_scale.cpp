#include "app/plan_scale.h"

#include "quantity/number_text.h"

namespace squaredig::app {
namespace {

// From the grid at corner A, the underside of the tank standing for the height above the ellipsoid.
Ratio computed_factor(const geodesy::Grid& grid, const design::DesignInput& design) {
  const design::Tank tank = design::place_tank(design);
  return geodesy::work_factors(grid, tank.corners[0], tank.underside.level - Elevation{}).combined;
}

}  // namespace

pegs::OnGrid grid_of(const job::Job& job) {
  pegs::OnGrid on;
  if (!job.grid) return on;
  on.stated_factor = job.grid->scale_factor;
  if (job.grid->crs)
    on.grid =
        geodesy::Grid::open("EPSG:" + std::to_string(*job.grid->crs), job.place_of("grid.crs"));
  return on;
}

void scale_plan(const job::Job& job, design::DesignInput& design,
                std::vector<std::string>& assumed) {
  design.plan_lengths = job.grid ? job.grid->plan_lengths : design::PlanLengths::Grid;
  if (design.plan_lengths == design::PlanLengths::Grid) return;
  const pegs::OnGrid on = grid_of(job);
  if (on.stated_factor) {
    design.combined_factor = *on.stated_factor;
    return;
  }
  if (!on.grid)
    refuse(job.place_of("grid.plan_lengths"), "ground lengths on a local grid without a factor",
           "scale_factor, or a crs from which it is computed",
           "state scale_factor, or give grid lengths");
  const Ratio factor = computed_factor(*on.grid, design);
  design.combined_factor = factor;
  assumed.push_back("ground lengths are scaled by " + fixed(factor.value(), 8) +
                    ", computed at corner A from " + on.grid->code() +
                    " with the underside of the tank as height above the ellipsoid");
}

}  // namespace squaredig::app
