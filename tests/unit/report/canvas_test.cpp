#include "report/canvas.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "report/depth_ramp.h"
#include "report/markup.h"
#include "report/tank_view.h"

namespace squaredig::report {
namespace {

std::string drawn(Canvas canvas) {
  canvas.line({{10, 20}, {110, 20}}, {0.5});
  canvas.text({10, 30}, "depth 1.25", Lettering{9}.bold().on(kPaper));
  canvas.fill({{0, 0}, {5, 0}, {5, 5}}, {1, 0, 0});
  return canvas.finish();
}

TEST(Canvas, TheSameCallsGiveTheSameBytes_canvas_1) {
  for (int i = 0; i < 3; ++i) {
    EXPECT_EQ(drawn(Canvas::pdf(kA4Portrait, "t", "2026-03-20")),
              drawn(Canvas::pdf(kA4Portrait, "t", "2026-03-20")));
    EXPECT_EQ(drawn(Canvas::svg(kA4Portrait, "t")), drawn(Canvas::svg(kA4Portrait, "t")));
    EXPECT_EQ(drawn(Canvas::png(kA4Portrait, 2)), drawn(Canvas::png(kA4Portrait, 2)));
  }
}

// The SVG's units are the millimetres of its viewBox; paper is measured in tests/pages.
TEST(Canvas, AMillimetreIsAMillimetre_canvas_2) {
  const std::string svg = drawn(Canvas::svg(kA4Portrait, "t"));
  EXPECT_NE(svg.find("viewBox=\"0 0 210 297\""), std::string::npos);
  EXPECT_NE(svg.find("d=\"M10 20L110 20\""), std::string::npos);
  const std::string pdf = drawn(Canvas::pdf(kA3Landscape, "t", "2026-03-20"));
  // 420 mm and 297 mm in points: 1190.551 and 841.8898
  EXPECT_NE(pdf.find("/MediaBox [ 0 0 1190.551"), std::string::npos);
}

TEST(Canvas, TextStaysTextAlone_canvas_3) {
  Canvas canvas = Canvas::svg(kA4Portrait, "\"><script>");
  canvas.text({0, 0}, "</text><script>alert(1)</script>&\"'", {9});
  const std::string svg = canvas.finish();
  EXPECT_EQ(svg.find("<script"), std::string::npos);
  EXPECT_NE(svg.find("&lt;/text&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;&quot;&#39;"),
            std::string::npos);
}

TEST(Canvas, ParagraphsBreakWhereTheirHeightSays) {
  Canvas canvas = Canvas::svg(kA4Portrait, "");
  const Lettering lettering{9};
  const std::string text = "one two three four five six seven eight nine ten eleven twelve";
  const double below = canvas.paragraph({0, 10}, 40, text, lettering);
  EXPECT_DOUBLE_EQ(below, 10 + canvas.paragraph_height(40, text, lettering));
  EXPECT_GT(below, 10 + 2 * line_step(9));
}

TEST(Markup, NothingOpensOrCloses_markup_1) {
  EXPECT_EQ(escaped("<b a=\"1\" c='2'>&"), "&lt;b a=&quot;1&quot; c=&#39;2&#39;&gt;&amp;");
}

TEST(Markup, WhatIsNotAllowedIsReplaced_markup_2) {
  EXPECT_EQ(clean_text("a\x01z\x7F"), "a\xEF\xBF\xBDz\xEF\xBF\xBD");
  EXPECT_EQ(clean_text("a\nb\tc"), "a b c");
  EXPECT_EQ(clean_text("\xC3\xA9\xE2\x82\xAC\xF0\x9F\x93\x90"),
            "\xC3\xA9\xE2\x82\xAC\xF0\x9F\x93\x90");
  EXPECT_EQ(clean_text("\xC0\xAF"), "\xEF\xBF\xBD\xEF\xBF\xBD");                  // overlong
  EXPECT_EQ(clean_text("\xED\xA0\x80").find("\xED\xA0\x80"), std::string::npos);  // a surrogate
  // U+202E would show 0.17 as 71.0; Hebrew letters stay as they are
  EXPECT_EQ(clean_text("\xE2\x80\xAE 0.17"), "\xEF\xBF\xBD 0.17");
  EXPECT_EQ(clean_text("\xE2\x81\xA7x"), "\xEF\xBF\xBDx");
  EXPECT_EQ(clean_text("\xD7\x90\xD7\x91\xE2\x80\x8F"), "\xD7\x90\xD7\x91\xE2\x80\x8F");
  EXPECT_EQ(clean_text("\xE2\x82"), "\xEF\xBF\xBD\xEF\xBF\xBD");  // cut off
}

// Relative luminance of a colour and the contrast of two, 1 to 21: WCAG 2.1, definitions, over the
// transfer function of IEC 61966-2-1.
double luminance(Colour c) {
  const auto linear = [](double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
}

double contrast(Colour a, Colour b) {
  const auto [dark, light] = std::minmax({luminance(a), luminance(b)});
  return (light + 0.05) / (dark + 0.05);
}

// CIE 1976 lightness of a colour, from its relative luminance.
double lightness(Colour c) {
  const double y = luminance(c);
  return y > 216.0 / 24389 ? 116 * std::cbrt(y) - 16 : y * 24389 / 27;
}

TEST(DepthRamp, DeeperIsDarkerInEvenSteps_ramp_1) {
  const double step = lightness(depth_colour(0.1)) - lightness(depth_colour(0));
  EXPECT_LT(step, -3);
  for (int i = 1; i < 10; ++i)
    EXPECT_NEAR(lightness(depth_colour(0.1 * (i + 1))) - lightness(depth_colour(0.1 * i)), step,
                0.1);
}

TEST(DepthRamp, BlackReadsOnEveryColour_ramp_2) {
  for (int i = 0; i <= 100; ++i) {
    EXPECT_GE(contrast(kInk, depth_colour(0.01 * i)), 4.5);
    EXPECT_GE(contrast(kInk, deviation_colour(0.02 * i - 1)), 4.5);
  }
  // WCAG 2.1: black on white is 21 to 1
  EXPECT_NEAR(contrast(kInk, kPaper), 21, 1e-9);
}

TEST(TankView, TheScaleIsARoundOne_view_1) {
  const TankView view({grid_point(100, 200), Bearing::degrees(90)},
                      {grid_point(100, 200), grid_point(131, 190)}, {{0, 0}, {320, 200}});
  EXPECT_EQ(view.scale_text(), "1:100");
  const At a = view(grid_point(100, 200)), b = view(grid_point(131, 190));
  EXPECT_NEAR(b.x - a.x, 310, 1e-9);
  EXPECT_NEAR(b.y - a.y, 100, 1e-9);  // across is down the page
  EXPECT_NEAR(view.north().y, -1, 1e-12);
}

}  // namespace
}  // namespace squaredig::report
