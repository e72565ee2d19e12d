// Words on a map cover no figure of it where there is room near: our own laws.
#include "report/map_labels.h"

#include <gtest/gtest.h>

#include <cmath>

#include "unit/report/reading.h"

namespace squaredig::report {
namespace {

struct Told {
  double x, y;
};

Told only_text(Canvas& canvas) {
  const std::string svg = canvas.finish();
  const auto x = all(svg, "<text[^>]* x=\"([^\"]*)\""), y = all(svg, "<text[^>]* y=\"([^\"]*)\"");
  EXPECT_EQ(x.size(), 1U) << svg;
  return {std::stod(x.at(0)), std::stod(y.at(0))};
}

Told told(const std::vector<Box>& figures, At wanted) {
  Canvas canvas = Canvas::svg({100, 80}, "");
  MapLabels labels({{0, 0}, {100, 80}});
  for (const Box& figure : figures) labels.keep_clear(figure);
  labels.tell(canvas, wanted, "no. 1", kInk);
  return only_text(canvas);
}

TEST(MapLabels, AWordStandsWhereItIsWantedIfThatIsFree) {
  const Told at = told({{{10, 10}, {20, 15}}}, {50, 40});
  EXPECT_NEAR(at.x, 50, 0.01);
  EXPECT_NEAR(at.y, 40, 0.01);
}

TEST(MapLabels, AWordCoversNoFigureAndStaysNear_map_labels_1) {
  const Box figure{{44, 37}, {56, 43}};
  const Told at = told({figure}, {50, 41});
  // above, below or beside it: letters reach 2.4 mm above the baseline and 0.7 mm below it
  EXPECT_TRUE(at.y + 0.6 <= 37 || at.y - 2.3 >= 43 || std::abs(at.x - 50) >= 6)
      << at.x << ' ' << at.y;
  EXPECT_LT(std::hypot(at.x - 50, at.y - 41), 6);
}

TEST(MapLabels, TwoWordsForOnePlaceStandApart) {
  Canvas canvas = Canvas::svg({100, 80}, "");
  MapLabels labels({{0, 0}, {100, 80}});
  labels.tell(canvas, {50, 40}, "no. 1", kInk);
  labels.tell(canvas, {50, 40}, "no. 2", kInk);
  const auto y = all(canvas.finish(), "<text[^>]* y=\"([^\"]*)\"");
  ASSERT_EQ(y.size(), 2U);
  EXPECT_GE(std::abs(std::stod(y[0]) - std::stod(y[1])), 2.9);
}

TEST(MapLabels, ItStaysInsideTheDrawing_map_labels_2) {
  const Told at = told({}, {-5, 40});
  EXPECT_GT(at.x, 3);
  EXPECT_LT(at.x, 10);
}

TEST(MapLabels, WithoutRoomItStandsWhereItIsWanted) {
  const Told at = told({{{0, 0}, {100, 80}}}, {50, 40});
  EXPECT_NEAR(at.x, 50, 0.01);
  EXPECT_NEAR(at.y, 40, 0.01);
}

}  // namespace
}  // namespace squaredig::report
