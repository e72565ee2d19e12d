// A box of a tank, 12 x 6 x 1.2 m, in a hole with vertical sides and level ground.
#pragma once

#include "fill/fill.h"
#include "grounds.h"

namespace squaredig::testing {

struct FillJob {
  design::DesignInput design;
  fill::FillInput fill;
  fill::WaterInput water;
  Ratio bulking = Ratio::of(1.25);
};

inline FillJob box_job(double length = 12, double width = 6, double height = 1.2) {
  const auto m = Length::metres;
  FillJob job;
  job.design = plain_pit(length, width, 0, Batter{}, grid_point(0, 0), Bearing::degrees(90));
  job.design.tank.height = m(height);
  job.design.pit.gap.all = m(0.7);
  job.fill.side_lift = m(0.3);
  job.fill.special_height = m(0.6);
  job.fill.capping = {m(0.15), m(0.15), m(0.15)};
  job.fill.capping_beyond = m(0.5);
  job.fill.finish = fill::ExistingGround{};
  job.fill.compacted_per_bank = Ratio::of(0.9);
  job.water = {
      Elevation::metres(1.5), UnitWeight::kilonewtons_per_cubic_metre(18), Ratio::of(1.2), {}};
  return job;
}

inline fill::FillResult fill_under(const FillJob& job, const Height& ground) {
  MadeSurvey survey(grid_surface(80, 3.3, ground));
  const auto pit = design::excavate(job.design, survey);
  return fill::fill(job.fill, {job.design, pit, job.bulking, &job.water});
}
inline fill::FillResult fill_under(const FillJob& job, double ground) {
  return fill_under(job, [=](double, double) { return ground; });
}

}  // namespace squaredig::testing
