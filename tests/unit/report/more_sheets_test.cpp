// Ground and field pages, fill sheet, hand-over book, and what lies round the pit.
#include <algorithm>

#include "report/base_sheet.h"
#include "report/dig_page.h"
#include "report/dig_sheet.h"
#include "report/dig_words.h"
#include "report/field_drawings.h"
#include "report/field_page.h"
#include "report/fill_drawing.h"
#include "report/fill_sheet.h"
#include "report/ground_page.h"
#include "report/ground_plan.h"
#include "report/peg_drawings.h"
#include "report/pegs_sheet.h"
#include "report/record_sheet.h"
#include "report/record_words.h"
#include "report/storage_drawing.h"
#include "unit/report/more_results.h"
#include "unit/report/reading.h"

namespace squaredig::report {
namespace {

TEST(Golden, WhatLiesRoundThePit) {
  const auto dig = invented_dig_with_site();
  Canvas canvas = Canvas::svg({160, 120}, "plan");
  const PitPlan plan{dig};
  const Box box{{0, 0}, {160, 120}};
  draw_pit_plan(canvas, plan, whole_pit(plan, box), box);
  expect_golden("pit-surroundings", canvas.finish());
}

TEST(Golden, DepthRampAndSymbols) {
  const auto dig = invented_dig_with_site();
  Canvas canvas = Canvas::svg({240, 16}, "key");
  draw_depth_ramp(canvas, {1, 6}, dig);
  draw_symbols(canvas, {100, 6}, 1, dig);
  expect_golden("key", canvas.finish());
}

TEST(Golden, PegPlan) {
  Canvas canvas = Canvas::svg({190, 118}, "pegs");
  draw_peg_plan(canvas, invented_pegs(), {{0, 0}, {190, 117}});
  expect_golden("peg-plan", canvas.finish());
}

TEST(Golden, GroundPlan) {
  Canvas canvas = Canvas::svg({190, 150}, "ground");
  draw_ground_plan(canvas, invented_ground(), {{0, 0}, {190, 150}});
  expect_golden("ground-plan", canvas.finish());
}

TEST(Golden, FieldPlanAndResiduals) {
  const auto field = invented_field();
  Canvas plan = Canvas::svg({190, 110}, "field");
  draw_field_plan(plan, field, {{0, 0}, {190, 110}});
  expect_golden("field-plan", plan.finish());
  Canvas bars = Canvas::svg({190, residual_height(field.setups[0])}, "residuals");
  draw_residuals(bars, field.setups[0], field.tests,
                 {{0, 0}, {190, residual_height(field.setups[0])}});
  expect_golden("residuals", bars.finish());
}

TEST(Golden, LayerAsBuilt) {
  const auto fill = invented_fill();
  Canvas canvas = Canvas::svg({190, 96}, "layer");
  draw_layer(canvas, fill, fill.layers[0], {{1, 0}, {189, 96}});
  expect_golden("layer", canvas.finish());
}

TEST(Golden, LiftsAndStorage) {
  Canvas lifts = Canvas::svg({190, 74}, "lifts");
  draw_lifts(lifts, invented_fill(), {{0, 0}, {190, 74}});
  expect_golden("lifts", lifts.finish());
  Canvas storage = Canvas::svg({190, 80}, "storage");
  draw_storage(storage, invented_record().storage, {{0, 0}, {190, 80}});
  expect_golden("storage", storage.finish());
}

TEST(DigWords, BattersInWordsAndDegrees) {
  const auto dig = invented_dig_with_site();
  const auto rows = batter_rows(dig);
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].label, "AB");
  EXPECT_EQ(rows[0].value, "vertical (90 degrees)");
  EXPECT_EQ(rows[1].label, "BC, CD, DA");
  // atan(1 / 1.5) = 33.69 degrees
  EXPECT_EQ(rows[1].value, "1.5 across for each 1 up (33.7 degrees)");
  EXPECT_EQ(batter_source(dig), "Batters given by: the ground report");
  EXPECT_EQ(batter_source(invented_dig()), "Nobody is named who gave the batters.");
}

TEST(DigWords, TheStopTellsTheStaffReadingAtEachCorner) {
  const auto stops = stops_of(invented_dig());
  ASSERT_EQ(stops.size(), 4U);
  EXPECT_EQ(stops[3].corner, "D");
  EXPECT_EQ(stops[3].level, "50.000");
  EXPECT_EQ(stops[3].staff, "2.345");
  const std::string page = dig_page({invented_dig()}, invented_sheet("Dig sheet"));
  EXPECT_EQ(all(page, "<strong>(2\\.345)</strong>").size(), 4U);
}

TEST(DigWords, EverythingNearIsOnPaperAndOnThePage) {
  const auto dig = invented_dig_with_site();
  const std::string page = dig_page({dig}, invented_sheet("Dig sheet"));
  for (const char* said :
       {">0.35 past it<", ">1.32<", ">0.60<", ">0.62 clear<", ">50.525<", ">7.3<", ">4.7<",
        ">0.17<", "c1r1", "1.5 across for each 1 up (33.7 degrees)", "the ground report"})
    EXPECT_TRUE(has(page, said)) << said;
  EXPECT_EQ(dig_sheet_pdf({dig}, invented_sheet("Dig sheet")).substr(0, 5), "%PDF-");
}

TEST(DigWords, OfManyCellsDugTooDeepTheLargestAreListed) {
  auto dig = invented_dig_with_site();
  for (int i = 2; i <= 20; ++i)
    dig.progress[0].over_dig_plan.push_back({"c" + std::to_string(i) + "r7",
                                             BankVolume::cubic_metres(0.01 * i),
                                             Area::square_metres(1)});
  const auto tables = progress_tables(dig);
  ASSERT_EQ(tables.size(), 2U);
  ASSERT_EQ(tables[1].rows.size(), 12U);
  EXPECT_EQ(tables[1].rows[0].at(0), "c1r1");
  EXPECT_EQ(tables[1].rows[1].at(0), "c20r7");
  EXPECT_EQ(tables[1].notes.at(0), "The largest of 20 cells; dig.json lists all.");
}

TEST(GroundPage, FiguresAreFieldsOfTheResult_ground_page_1) {
  auto ground = invented_ground();
  ground.suspects[0].at.height = level(77.777);
  ground.contours[0].level = level(58.4);
  const std::string page = ground_page(ground, invented_sheet("Existing ground"));
  EXPECT_TRUE(has(page, ">77.777<"));
  EXPECT_TRUE(has(page, ">58.4<"));
  EXPECT_TRUE(has(page, "1200.0 m"));
  EXPECT_TRUE(has(page, "contours every 0.2 m"));
}

TEST(FieldPage, FiguresAreFieldsOfTheResult_field_page_1) {
  const std::string page = field_page(invented_field(), invented_sheet("Field books"));
  // sigmas are the roots of 4, 9 and 16 square millimetres
  for (const char* said :
       {">60.123<", ">2.0<", ">3.0<", ">4.0<", ">-48.5 mm<", ">-5.60<", "left out", "-2.1",
        ">0.6543<", ">-0.7<", ">-1.31<", "60.777", ">0.8<", "contradicts all others"})
    EXPECT_TRUE(has(page, said)) << said;
}

TEST(FillSheet, FiguresAreFieldsOfTheResult_fill_sheet_1) {
  auto fill = invented_fill();
  fill.side_fill[1].to = level(50.619);
  const std::string page = fill_page(fill, invented_sheet("Fill sheet"));
  for (const char* said :
       {">50.970<", ">131<", "thinnest 125", ">96.9 %<", ">0.43<", ">50.619<", ">4.8 m", ">125.4<",
        "Layer cap 1: does not conform", ">0.50<", "no wall friction"})
    EXPECT_TRUE(has(page, said)) << said;
  EXPECT_EQ(fill_sheet_pdf(fill, invented_sheet("Fill sheet")),
            fill_sheet_pdf(fill, invented_sheet("Fill sheet")));
}

TEST(RecordSheet, FiguresAreFieldsOfTheResults_record_sheet_1) {
  const auto record = invented_record();
  const auto dig = invented_dig();
  const auto base = invented_base();
  const auto answers = answers_table(record);
  EXPECT_EQ(answers.rows.at(0),
            (std::vector<std::string>{"base", "does not conform", "2026-03-20 14:10",
                                      "survey of the base", "3"}));
  const auto figures = figures_table("Base", record.stages[0].figures);
  EXPECT_EQ(figures.rows.at(0),
            (std::vector<std::string>{"level high", "18.3 mm", "5.0 mm", "does not conform"}));
  EXPECT_EQ(figures.rows.at(1), (std::vector<std::string>{"trim", "0.04 m\xC2\xB3", "", ""}));
  const auto plain = figures_table("Dig", {record.stages[0].figures[1]});
  EXPECT_EQ(plain.rows.at(0), (std::vector<std::string>{"trim", "0.04 m\xC2\xB3"}));
  EXPECT_EQ(plain.columns.size(), 2U);
  EXPECT_EQ(storage_table(record.storage).rows.at(4),
            (std::vector<std::string>{"50.420", "4.80", "4.56"}));
  const RecordBook book{record, nullptr, &dig, &base, nullptr};
  const auto inputs = input_tables(record);
  ASSERT_EQ(inputs.size(), 1U);
  EXPECT_EQ(inputs[0].rows.at(0).at(1), std::string(64, 'a'));  // the whole checksum
  const auto tank = tank_table(record);
  EXPECT_EQ(tank.rows.at(0), (std::vector<std::string>{"A", "1000.000", "2000.000", "50.020",
                                                       "1000.003", "2000.000", "50.025"}));
  EXPECT_EQ(record_sheet_pdf(book, invented_sheet("Hand-over book")).substr(0, 5), "%PDF-");
}

TEST(RecordSheet, ItSaysWhatItDoesNotHold_record_sheet_2) {
  const auto record = invented_record();
  const auto dig = invented_dig();
  const auto pegs = invented_pegs();
  const auto base = invented_base();
  const auto fill = invented_fill();
  EXPECT_EQ(missing_chapters({record, &pegs, &dig, &base, &fill}), "");
  EXPECT_EQ(missing_chapters({record, &pegs, &dig, nullptr, nullptr}),
            "Not in this book, as the job does not name it: verified, filled.");
}

TEST(Sheets, AJobWithoutADateSaysSo) {
  SheetHead head = invented_sheet("Fill sheet");
  EXPECT_EQ(job_line(head), "2026-03-20 \xC2\xB7 revision B \xC2\xB7 drawing 104");
  head.date.clear();
  EXPECT_TRUE(has(fill_page(invented_fill(), head), "no date in the job"));
  EXPECT_FALSE(has(fill_page(invented_fill(), head), "1970"));
  EXPECT_EQ(Canvas::pdf(kA4Portrait, "t", "").finish(),
            Canvas::pdf(kA4Portrait, "t", "1970-01-01").finish());
}

TEST(Sheets, NoLabelOfAnyResultIsMarkup) {
  const std::string hostile = "</td></script><script>x</script><img onerror=x>\"'";
  auto dig = invented_dig_with_site();
  dig.surroundings.keep_out[0].name = dig.surroundings.services[0].name = hostile;
  dig.clashes[0].string = dig.nearby[1].string = dig.room[0].string = hostile;
  dig.progress[0].name = *(dig.batter_given_by = hostile);
  auto pegs = invented_pegs();
  pegs.pipes.push_back({hostile, hostile, {}, at_tank(1, 0), {}, {}, {}, hostile, {}, {}});
  pegs.polar.push_back({hostile, hostile, hostile, {}, {}, {}, {}, {}, hostile, {}, {}});
  auto base = invented_base();
  base.points[0].point = hostile;
  auto fill = invented_fill();
  fill.layers[0].name = fill.materials[0].what = hostile;
  auto field = invented_field();
  field.points[0].point = field.points[0].code = field.setups[0].setup = hostile;
  field.setups[0].residuals[0].target = field.withheld[0].point = hostile;
  auto ground = invented_ground();
  ground.suspects[0].point = ground.breaklines[0].name = ground.found[0].finding.text = hostile;
  const auto sheet = [&](const char* title) {
    auto head = invented_sheet(title);
    head.revision = head.drawing = head.prepared_by = hostile;
    return head;
  };
  for (const std::string& page :
       {dig_page({dig, &pegs}, sheet("Dig sheet")), pegs_page(pegs, sheet("Peg sheet")),
        base_page(base, sheet("Base report")), fill_page(fill, sheet("Fill sheet")),
        field_page(field, sheet("Field books")), ground_page(ground, sheet("Existing ground"))}) {
    EXPECT_FALSE(has(page, "<script>x"));
    EXPECT_FALSE(has(page, "<img"));
    EXPECT_TRUE(has(page, "&lt;/td&gt;&lt;/script&gt;"));
  }
}

}  // namespace
}  // namespace squaredig::report
