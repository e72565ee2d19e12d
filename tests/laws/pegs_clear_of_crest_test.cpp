// A thousand random grounds and pits: no peg stands in the pit or inside crest + setback.
#include <gtest/gtest.h>

#include <random>

#include "unit/pegs/site.h"

namespace squaredig::pegs {
namespace {

struct Made {
  Site site;
  double setback;
};

Made made(unsigned seed) {
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Made m{Site(testing::rough_ground(seed, between(3.2, 4.5), between(0, 0.7)), 44, 4),
         between(0.2, 2)};
  auto& tank = m.site.design.tank;
  tank.bearing_ab = Bearing::degrees(between(0, 360));
  tank.length = Length::metres(between(5, 16));
  tank.width = Length::metres(between(3, 9));
  tank.corner_a = ahead(origin().at, *tank.bearing_ab, *tank.length / -2, *tank.width / -2);
  tank.underside_level = Elevation::metres(between(61.2, 62.0));
  tank.fall = Fall::percent(between(0, 2));
  tank.fall_bearing = Bearing::degrees(between(0, 360));
  m.site.design.pit.batter = {};
  for (const char* side : {"AB", "BC", "CD", "DA"}) {
    const double run = between(-0.4, 1.6);
    m.site.design.pit.batter.by_side.emplace_back(side, Batter::run_per_rise(run < 0 ? 0 : run));
  }
  m.site.pegs.offset = Length::metres(between(0.5, 4));
  m.site.pegs.setback = Length::metres(m.setback);
  if (seed % 3 == 0) {
    m.site.pegs.site = design::SiteInput{};
    m.site.pegs.site->influence = Batter::run_per_rise(between(0.5, 2));
  }
  return m;
}

TEST(PegsLaw, NeverInsideCrestAndSetback_set_out_2) {
  std::size_t by_offset = 0, by_setback = 0, by_influence = 0;
  for (unsigned seed = 1; seed <= 1000; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Made m = made(seed);
    const auto pit = m.site.pit();
    const PegsResult r = set_out(m.site.pegs, m.site.design, pit, m.site.survey);
    ASSERT_EQ(r.reference.size(), 8U);
    for (const ReferencePeg& p : r.reference) {
      by_offset += p.placed_by == PegRule::Offset;
      by_setback += p.placed_by == PegRule::Setback;
      by_influence += p.placed_by == PegRule::Influence;
      ASSERT_FALSE(pit.dug_at(p.at)) << p.name;
      ASSERT_GE(p.clear_of_crest.in_metres(), m.setback - 1e-9) << p.name;
      ASSERT_GE(p.beyond_corner.in_metres(), m.site.pegs.offset.in_metres() - 1e-9);
      // nothing of the string from setback short of the peg on outward is dug
      GridPoint corner;
      for (const Corner& c : r.corners)
        if (c.name == p.corner) corner = c.at.at;
      const Bearing way = Bearing::of_line(corner, p.at);
      for (double back = m.setback - 1e-6; back > -12; back -= 0.37)
        ASSERT_FALSE(pit.dug_at(ahead(p.at, way, Length::metres(-back)))) << p.name << " " << back;
      if (p.placed_by == PegRule::Setback) {
        ASSERT_NEAR(p.clear_of_crest.in_metres(), m.setback, 1e-9);
      }
    }
  }
  EXPECT_GT(by_offset, 500U);
  EXPECT_GT(by_setback, 500U);
  EXPECT_GT(by_influence, 100U);
}

}  // namespace
}  // namespace squaredig::pegs
