// Small invented results of field, ground, fill and record to draw.
#pragma once

#include "field/field_result.h"
#include "fill/fill_result.h"
#include "ground/ground_result.h"
#include "record/record_result.h"
#include "unit/report/results.h"

namespace squaredig::report {

inline ground::GroundResult invented_ground() {
  ground::GroundResult ground;
  ground.head = invented_head();
  ground.points = 4;
  ground.triangles = 2;
  ground.plan_area = Area::square_metres(1200);
  ground.lowest = level(60.1);
  ground.highest = level(61.3);
  ground.contour_interval = metres(0.2);
  ground.rim = {{grid_point(kEast, kNorth), grid_point(kEast + 40, kNorth),
                 grid_point(kEast + 40, kNorth + 30), grid_point(kEast, kNorth + 30)}};
  for (int i = 0; i < 6; ++i)
    ground.contours.push_back(
        {level(60.2 + 0.2 * i),
         {grid_point(kEast + 3 + 6 * i, kNorth), grid_point(kEast + 5 + 6 * i, kNorth + 15),
          grid_point(kEast + 3 + 6 * i, kNorth + 30)},
         false});
  ground.contours.push_back(
      {level(61.2),
       {grid_point(kEast + 36, kNorth + 5), grid_point(kEast + 38, kNorth + 5),
        grid_point(kEast + 37, kNorth + 7)},
       true});
  ground.breaklines = {{"kerb",
                        "kerb.csv",
                        {{grid_position(kEast + 2, kNorth + 20, 60.2), true, 2},
                         {grid_position(kEast + 38, kNorth + 24, 61.2), true, 3}}}};
  ground.suspects = {{"P7",
                      "stands 0.900 m above",
                      metres(0.9),
                      grid_position(kEast + 20, kNorth + 10, 61.7),
                      {"ground.csv", 8, 1}}};
  ground.head.findings = {{"spike", "point \"P7\" stands 0.900 m above"}};
  ground.found = {{ground.head.findings[0], grid_point(kEast + 20, kNorth + 10)}};
  ground.positions = ground.rim[0];
  return ground;
}

inline field::FieldResult invented_field() {
  field::FieldResult field;
  field.head = invented_head();
  const field::Covariance covariance{4e-6, 0, 9e-6, 0, 0, 1.6e-5};
  field.points = {{"A1",
                   "PEG",
                   grid_point(kEast, kNorth),
                   level(60.123),
                   covariance,
                   "set-up S1",
                   2,
                   {"setups.csv", 4, 1}},
                  {"GL1",
                   "GL",
                   grid_point(kEast + 30, kNorth + 12),
                   level(61.5),
                   {},
                   "set-up S1",
                   1,
                   {"setups.csv", 5, 1}}};
  field.points[0].ellipse = field::ErrorEllipse{metres(0.003), metres(0.002), Bearing::degrees(30)};
  field.withheld = {{"Q9", "its distance contradicts all others", {"setups.csv", 9, 1}}};
  field::SetupResult setup;
  setup.setup = "S1";
  setup.kind = field::SetupKind::FreeStation;
  setup.at = grid_point(kEast + 12, kNorth - 8);
  setup.height = level(62);
  setup.sigma0 = 0.93;
  setup.redundancy = 5;
  setup.residuals = {
      {"CP1", field::Reading::Direction, {{"setups.csv", 2, 1}}, 3.4, 0.6, 1.2, 21.0, {}, false},
      {"CP2", field::Reading::Distance, {{"setups.csv", 3, 1}}, -48.5, 0.7, -5.6, 12.0, {}, true},
      {"A1", field::Reading::Zenith, {{"setups.csv", 4, 1}}, 0.0, 0.0, {}, {}, {}, false}};
  field.setups.push_back(setup);
  field::LevelResult levels;
  levels.runs.push_back({"CP1",
                         "CP3",
                         4,
                         metres(230),
                         metres(1.234),
                         metres(-0.0021),
                         metres(0.006),
                         Verdict::Conforms,
                         {},
                         {"levels.csv", 2, 1}});
  levels.points = {{"TP1", level(60.777), metres(0.0008), false, {"levels.csv", 3, 1}}};
  levels.residuals = {
      {"CP1", "TP1", metres(0.6543), metres(-0.0007), 0.25, -1.31, {"levels.csv", 3, 1}}};
  field.levels = levels;
  return field;
}

inline fill::FillResult invented_fill() {
  fill::FillResult fill;
  fill.head = invented_head();
  fill.bedding = CompactedVolume::cubic_metres(4.81);
  const auto lift = [](int number, double from, double to, double placed, bool special) {
    return fill::SideLift{number,
                          level(from),
                          level(to),
                          CompactedVolume::cubic_metres(placed),
                          BankVolume::cubic_metres(placed / 0.9),
                          {},
                          special};
  };
  fill.side_fill = {lift(1, 50.02, 50.32, 6.6, true), lift(2, 50.32, 50.62, 7.7, true),
                    lift(3, 50.62, 50.82, 5.5, false)};
  fill.capping = {{1, level(50.82), level(50.97), Area::square_metres(20),
                   CompactedVolume::cubic_metres(3), BankVolume::cubic_metres(3.3),
                   LooseVolume::cubic_metres(4.1)}};
  fill.materials = {{"capping", CompactedVolume::cubic_metres(3), BankVolume::cubic_metres(3.3),
                     LooseVolume::cubic_metres(4.1), 6.0}};
  fill::LayerBuilt layer;
  layer.name = "cap 1";
  layer.mean_thickness = metres(0.1501);
  layer.thinnest = metres(0.1254);
  layer.thinnest_at = at_tank(1, 1);
  layer.thickest = metres(0.1602);
  layer.thickest_at = at_tank(2, 1);
  layer.volume = CompactedVolume::cubic_metres(3);
  layer.area = layer.wanted_area = Area::square_metres(20);
  layer.planned = metres(0.15);
  layer.tolerance = metres(0.02);
  layer.uncertainty = metres(0.003);
  layer.verdict = Verdict::DoesNotConform;
  for (int i = 0; i < 6; ++i)
    layer.points.push_back({"L" + std::to_string(i),
                            {at_tank(0.5 + 1.5 * (i % 3), 0.8 + 1.4 * (i / 3)), level(50.97)},
                            metres(0.126 + 0.005 * i)});
  fill.layers = {layer};
  fill.ab = Bearing::degrees(90);
  for (const auto& [u, v] : {std::pair{0, 0}, std::pair{4, 0}, std::pair{4, 3}, std::pair{0, 3}})
    fill.tank_corners.push_back({at_tank(u, v), level(50.02)});
  fill.toe = {at_tank(-0.2, -0.2), at_tank(4.2, -0.2), at_tank(4.2, 3.2), at_tank(-0.2, 3.2)};
  fill::DensityTests tests;
  tests.standard = "standard";
  tests.wanted = Ratio::percent(95);
  tests.mean = tests.least = Ratio::percent(96.87);
  tests.verdict = Verdict::Conforms;
  tests.layers = {{"lift 1",
                   4,
                   Ratio::percent(96.87),
                   Ratio::percent(96.1),
                   {},
                   Verdict::Conforms,
                   metres(0.43),
                   at_tank(2, 2),
                   metres(2),
                   metres(2)}};
  fill.tests = tests;
  fill.uplift = {{"empty, uncovered", Force::kilonewtons(120), Force::kilonewtons(60), 0.5}};
  fill.uplift_definition = "down over up, no wall friction";
  return fill;
}

inline record::RecordResult invented_record() {
  record::RecordResult record;
  record.head = invented_head();
  record.storage.gross = Volume::cubic_metres(9.6);
  record.storage.net = Volume::cubic_metres(9.12);
  record.storage.outlet = level(50.42);
  record.storage.below_outlet = Volume::cubic_metres(4.56);
  record.storage.stands_on = "the underside as designed";
  for (int i = 0; i <= 8; ++i)
    record.storage.table.push_back(
        {level(50.02 + 0.1 * i), Volume::cubic_metres(1.2 * i), Volume::cubic_metres(1.14 * i)});
  record::StageVerdict base;
  base.stage = "base";
  base.done = "verified";
  base.verdict = "does not conform";
  base.when = "2026-03-20 14:10";
  base.when_is = "survey of the base";
  base.findings = 3;
  base.figures = {{"level high", 18.3, "mm", 1, 5.0, "does not conform"},
                  {"trim", 0.04, "m3", 2, {}, ""}};
  record.tank_designed = {{at_tank(0, 0), level(50.02)}};
  record.tank_built = std::vector<GridPosition>{{at_tank(0.003, 0), level(50.025)}};
  base.inputs = {{"as-dug.csv", std::string(64, 'a')}};
  record.stages = {base};
  return record;
}

// The invented dig with everything round it: a boundary it passes, a service, the line of
// influence.
inline dig::DigResult invented_dig_with_site() {
  dig::DigResult dig = invented_dig();
  dig.surroundings.keep_out = {
      {"fence",
       "b.csv",
       {{{at_tank(-3, -1.5), {}}, false, 2}, {{at_tank(7, -1.2), {}}, false, 3}}}};
  dig.surroundings.services = {
      {"water main",
       "s.csv",
       {{{at_tank(-2, 4.2), level(50.7)}, true, 2}, {{at_tank(6, 4.6), level(50.4)}, true, 3}}}};
  dig.surroundings.influence = Batter::run_per_rise(1.5);
  dig.surroundings.influence_line = {{{at_tank(-1.7, -1.7), level(kGround)},
                                      {at_tank(5.7, -1.7), level(kGround)},
                                      {at_tank(5.7, 4.7), level(kGround)},
                                      {at_tank(-1.7, 4.7), level(kGround)}}};
  dig.surroundings.spoil_setback = metres(0.5);
  dig.clashes = {
      {"keep-out and influence line", "fence", at_tank(2, -1.35), metres(-0.35), {}, {}, {}}};
  dig.nearby = {dig.clashes[0],
                {"service and excavation", "water main", at_tank(3, 4.45), metres(0.62),
                 metres(0.5), metres(0), level(50.525)}};
  dig.room = {{"AB", metres(1.32), metres(0.6), "fence", at_tank(4, -0.2)},
              {"CD", {}, metres(0.6), "", at_tank(2, 3.2)}};
  dig.batters = {{"AB", Batter::run_per_rise(0)},
                 {"BC", Batter::run_per_rise(1.5)},
                 {"CD", Batter::run_per_rise(1.5)},
                 {"DA", Batter::run_per_rise(1.5)}};
  dig.batter_given_by = "the ground report";
  dig.vertical_faces = {{"on side AB", metres(1.62), at_tank(2, -0.2)}};
  dig::ProgressResult week;
  week.name = "week 1";
  week.dug = BankVolume::cubic_metres(7.3);
  week.remaining = BankVolume::cubic_metres(4.7);
  week.over_dig = BankVolume::cubic_metres(0.4);
  week.deepest_over_dig = metres(0.17);
  week.deepest_at = at_tank(1.2, 1.4);
  week.over_dig_plan = {{"c1r1", BankVolume::cubic_metres(0.4), Area::square_metres(0.9)}};
  dig.progress = {week};
  return dig;
}

}  // namespace squaredig::report
