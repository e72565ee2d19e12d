#include <gtest/gtest.h>

#include <algorithm>

#include "report/base_maps.h"
#include "report/base_sheet.h"
#include "report/dig_page.h"
#include "report/dig_sheet.h"
#include "report/flow.h"
#include "report/page.h"
#include "report/peg_drawings.h"
#include "report/pegs_sheet.h"
#include "unit/report/reading.h"
#include "unit/report/results.h"

namespace squaredig::report {
namespace {

TEST(Golden, PitPlan) {
  const auto dig = invented_dig();
  const auto pegs = invented_pegs();
  Canvas canvas = Canvas::svg({160, 120}, "plan");
  const PitPlan plan{dig, &pegs};
  const Box box{{0, 0}, {160, 120}};
  draw_pit_plan(canvas, plan, whole_pit(plan, box), box);
  expect_golden("pit-plan", canvas.finish());
}

TEST(Golden, Sections) {
  const auto dig = invented_dig();
  Canvas canvas = Canvas::svg({250, 60}, "sections");
  draw_sections(canvas, dig, {{0, 0}, {250, 60}});
  expect_golden("sections", canvas.finish());
}

TEST(Golden, RecoverySketch) {
  const auto pegs = invented_pegs();
  Canvas canvas = Canvas::svg({92, 66}, "sketch");
  draw_recovery(canvas, pegs, 2, {{0, 0}, {92, 66}});
  expect_golden("recovery", canvas.finish());
}

TEST(Golden, DeviationMap) {
  const auto base = invented_base();
  Canvas canvas = Canvas::svg({190, 105}, "map");
  draw_deviation_map(canvas, base, {{0, 0}, {190, 105}});
  expect_golden("deviation", canvas.finish());
}

TEST(DigPage, EveryFigureOfACellIsTheResults_dig_page_1) {
  const auto dig = invented_dig();
  const std::string page = dig_page({dig}, invented_sheet("Dig sheet"));
  EXPECT_TRUE(has(page, "[\"c1r2\",1,2,1.5,2.5,51.0,50.0,1.0,1.0,2.345,\"floor and batters\"]"));
  EXPECT_TRUE(has(page, "[\"c-1r-1\",-1,-1,-0.5,-0.5,51.0,null,null,0.25,null,"));
  // each cell has its square on the plan and its figure
  const auto cells = all(page, "<g class=\"cells\">(.*?)</g>");
  ASSERT_EQ(cells.size(), 1U);
  EXPECT_EQ(std::count(cells[0].begin(), cells[0].end(), 'Z'), 30);
  EXPECT_EQ(dig.grid.cells.size(), 30U);
}

TEST(DigSheet, FiguresAreFieldsOfTheResult_dig_sheet_1) {
  auto dig = invented_dig();
  const auto text_of = [&] {
    Canvas canvas = Canvas::svg({160, 120}, "");
    const Box box{{0, 0}, {160, 120}};
    const PitPlan plan{dig};
    draw_pit_plan(canvas, plan, whole_pit(plan, box), box);
    return all(canvas.finish(), ">([^<>]+)</text>");
  };
  const auto before = text_of();
  EXPECT_EQ(std::count(before.begin(), before.end(), "1.00"), 12);
  // a cell's cut is shown as it stands in the result, whatever its levels are
  for (auto& cell : dig.grid.cells)
    if (cell.cut_at_centre) cell.cut_at_centre = metres(0.77);
  const auto after = text_of();
  EXPECT_EQ(std::count(after.begin(), after.end(), "0.77"), 12);
}

TEST(DigSheet, TheSameBytesEveryTime_dig_sheet_2) {
  const auto dig = invented_dig();
  const auto pegs = invented_pegs();
  const std::string first = dig_sheet_pdf({dig, &pegs}, invented_sheet("Dig sheet"));
  EXPECT_EQ(first.substr(0, 5), "%PDF-");
  EXPECT_EQ(first, dig_sheet_pdf({dig, &pegs}, invented_sheet("Dig sheet")));
}

// A pit of 60 by 40 cells does not fit an A4 page in readable figures: it is cut into windows.
TEST(DigSheet, LargePitsComeInWindows_dig_sheet_3) {
  const auto small = invented_dig(), large = invented_dig(60, 40);
  const auto pages = [](const std::string& pdf) {
    return std::stoi(all(pdf, "/Type /Pages[^>]*/Count ([0-9]+)").at(0));
  };
  // one A3, one A4 for the cab, what lies round the pit, one list
  EXPECT_EQ(pages(dig_sheet_pdf({small}, invented_sheet("Dig sheet"))), 4);
  // 62 by 42 cells with rim, at least 8.1 mm each, 264 mm by 130 mm to a page: 2 by 3 windows;
  // 2400 cells in lists of two columns of at least 40 lines: at most 30 pages
  const int count = pages(dig_sheet_pdf({large}, invented_sheet("Dig sheet")));
  EXPECT_GE(count, 1 + 6 + 20);
  EXPECT_LE(count, 1 + 9 + 30);
}

TEST(PegsSheet, FiguresAreFieldsOfTheResult_pegs_sheet_1) {
  auto pegs = invented_pegs();
  pegs.reference[0].beyond_corner = metres(7.654);
  pegs.corners[0].recovery[0].ground = metres(8.765);
  const std::string page = pegs_page(pegs, invented_sheet("Peg sheet"));
  EXPECT_TRUE(has(page, ">7.654<"));
  EXPECT_TRUE(has(page, ">8.765<"));
  EXPECT_EQ(pegs_sheet_pdf(pegs, invented_sheet("Peg sheet")).substr(0, 5), "%PDF-");
}

TEST(BaseSheet, FiguresAreFieldsOfTheResult_base_sheet_1) {
  auto base = invented_base();
  base.points[4].deviation = metres(-0.0442);
  const std::string page = base_page(base, invented_sheet("Base report"));
  EXPECT_TRUE(has(page, ">-44<"));
  EXPECT_TRUE(has(page, "-44.2"));
  EXPECT_TRUE(has(page, "+12.3 mm"));
  EXPECT_TRUE(has(page, "The base does not conform."));
  EXPECT_TRUE(has(page, "check again after rain, traffic or frost"));
  EXPECT_EQ(base_sheet_pdf(base, invented_sheet("Base report")).substr(0, 5), "%PDF-");
}

TEST(Page, LabelsAreTextAlone_page_1) {
  ResultHead head = invented_head();
  head.job = "</title><script>x</script>\xE2\x80\xAE\xD7\x90";
  const SheetHead sheet = invented_sheet("Sheet");
  Page page(sheet, head);
  page.data("{\"a\":\"</script><script>\"}");
  page.section("one", "One", table_html({"T<i>", {{"c<i>"}}, {{"<i>"}}, {"n<i>"}}));
  const std::string html = page.finish("");
  EXPECT_FALSE(has(html, "<script>x"));
  EXPECT_FALSE(has(html, "<i>"));
  EXPECT_TRUE(has(html, "<bdi>&lt;/title&gt;"));
  EXPECT_TRUE(has(html, "{\"a\":\"\\u003c/script>\\u003cscript>\"}"));
}

TEST(Page, NothingIsAskedOfTheNetwork_page_2) {
  const std::string html = dig_page({invented_dig()}, invented_sheet("Dig sheet"));
  EXPECT_TRUE(has(html, "Content-Security-Policy\" content=\"default-src 'none'"));
  for (const auto& link : all(html, "(?:src|href)=\"([^\"]*)\"")) EXPECT_EQ(link, "data:,");
}

TEST(Page, TheSameBytesEveryTime_page_3) {
  const auto base = invented_base();
  EXPECT_EQ(base_page(base, invented_sheet("Base report")),
            base_page(base, invented_sheet("Base report")));
}

// A long table on SVG pages drawn one over the other: each page repeats the headings.
TEST(Flow, ATableTakesItsHeadingsAlong_flow_1) {
  Canvas canvas = Canvas::svg(kA4Portrait, "");
  const SheetHead sheet = invented_sheet("Sheet");
  const ResultHead head = invented_head();
  Flow flow(canvas, sheet, head, 9);
  Table table{"Long", {{"number"}}, {}, {}};
  for (int i = 0; i < 200; ++i) table.rows.push_back({std::to_string(i)});
  flow.table(table);
  EXPECT_GE(flow.page(), 4);
  const auto texts = all(canvas.finish(), ">([^<>]+)</text>");
  EXPECT_EQ(std::count(texts.begin(), texts.end(), "number"), flow.page());
  for (int i = 0; i < 200; ++i)
    EXPECT_EQ(std::count(texts.begin(), texts.end(), std::to_string(i)), 1) << i;
}

TEST(Flow, EachPageSaysItsNumber_flow_2) {
  Canvas canvas = Canvas::svg(kA4Portrait, "");
  const SheetHead sheet = invented_sheet("Sheet");
  ResultHead head = invented_head();
  for (int i = 0; i < 90; ++i) head.cautions.push_back("caution number " + std::to_string(i));
  Flow flow(canvas, sheet, head, 3);
  flow.cautions();
  ASSERT_GE(flow.page(), 2);
  const std::string svg = canvas.finish();
  for (int page = 1; page <= flow.page(); ++page)
    EXPECT_TRUE(has(svg, "page " + std::to_string(page) + " of 3"));
  for (int i = 0; i < 90; ++i) EXPECT_TRUE(has(svg, "caution number " + std::to_string(i) + "<"));
}

TEST(Sheet, AMissingBatterIsPrintedAcross) {
  auto dig = invented_dig();
  dig.head.cautions = {"NO BATTER GIVEN: support by others. Nobody is named."};
  const std::string page = dig_page({dig}, invented_sheet("Dig sheet"));
  EXPECT_TRUE(has(page, "<p class=\"overprint\">NO BATTER GIVEN: support by others</p>"));
  EXPECT_TRUE(has(page, "<g class=\"overprint\">"));
  EXPECT_FALSE(has(dig_page({invented_dig()}, invented_sheet("Dig sheet")), "NO BATTER"));
}

}  // namespace
}  // namespace squaredig::report
