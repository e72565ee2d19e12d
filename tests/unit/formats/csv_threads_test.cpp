// One file read by one thread and by several: the same points, the same faults, the same lines.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <thread>

#include "formats/points_csv.h"
#include "quantity/number_text.h"
#include "refusal_text.h"
#include "unit/formats/text_file.h"

namespace squaredig::formats {
namespace {

using squaredig::testing::refusal_text;
using squaredig::testing::text_file;

void all_at_once(const Works& works) {
  std::vector<std::jthread> threads;
  for (const auto& work : works) threads.emplace_back(work);
}

// In an order of its own: nothing may hang on which piece is ready first.
void from_the_back(const Works& works) {
  std::for_each(works.rbegin(), works.rend(), [](const auto& work) { work(); });
}

std::string told(const PointsFile& file) {
  std::string text = file.record.sha256 + " " + std::to_string(file.record.read) + " " +
                     std::to_string(file.record.used) + "\n";
  for (const auto& caution : file.cautions) text += caution + "\n";
  for (const auto& aside : file.record.set_aside)
    text += std::to_string(aside.line) + " " + aside.why + "\n";
  if (!file.extent.empty())
    text += shortest(file.extent.low().easting.in_metres()) + " " +
            shortest(file.extent.high().northing.in_metres()) + "\n";
  for (std::size_t i = 0; i < file.points.size(); ++i) {
    const SurveyPoint& p = file.points.points[i];
    text += std::to_string(p.line) + "|" + std::string(file.points.label(i)) + "|" +
            std::string(file.points.code(i)) + "|" + shortest(p.at.at.easting.in_metres()) + "|" +
            shortest(p.at.at.northing.in_metres()) + "|" + shortest(p.at.height.in_metres()) + "|" +
            std::to_string(p.sigma_plan_mm) + (p.has_height ? "|h\n" : "|\n");
  }
  return text;
}

// What a reading tells or refuses, word for word.
std::string read(SourceFile source, const PointsWanted& wanted, const DoAll& together) {
  source.together = together;
  std::string text;
  const std::string refusal = refusal_text([&] { text = told(read_points_csv(source, wanted)); });
  return text + refusal;
}

// Fails where several threads read another thing than one; gives what they read.
std::string read_all_ways(const SourceFile& source, const PointsWanted& wanted = {}) {
  std::string alone = read(source, wanted, {});
  EXPECT_EQ(read(source, wanted, all_at_once), alone);
  EXPECT_EQ(read(source, wanted, from_the_back), alone);
  return alone;
}

// Rows as they come in the field: mostly sound, now and then something else.
class Rows {
 public:
  Rows(unsigned seed, char separator, char mark, int odd_in)
      : draw_(seed), separator_(separator), mark_(mark), odd_in_(odd_in) {}

  std::string text(std::size_t rows) {
    std::string text = joined({"point", "e", "n", "h", "code", "sigma_plan_mm"});
    for (std::size_t i = 0; i < rows; ++i) text += one_in(odd_in_) ? odd_row() : row(i);
    return text;
  }

 private:
  bool one_in(int n) { return n > 0 && draw_() % static_cast<unsigned>(n) == 0; }

  std::string number(std::size_t range) {
    const std::size_t millimetres = draw_() % (range * 1000);
    std::string text = fixed(static_cast<double>(millimetres) / 1000, 3);
    std::replace(text.begin(), text.end(), '.', mark_);
    return text;
  }

  std::string joined(const std::vector<std::string>& cells) const {
    std::string text = cells[0];
    for (std::size_t i = 1; i < cells.size(); ++i) text += separator_ + cells[i];
    return text + "\n";
  }

  std::string row(std::size_t i) {
    return joined({"P" + std::to_string(i), number(1000), number(1000), number(10),
                   i % 3 == 0 ? "TOB" : "GL", i % 5 == 0 ? "" : "12"});
  }

  std::string odd_row() {
    const std::vector<std::string> rows = {
        "# a comment\n",
        "\n",
        joined({"", "", "", "", "", ""}),
        joined({"Q1", "1", "2", "3", "GL", ""}),
        joined({"\"a quoted, name\"", "1", "2", "3", "GL", ""}),
        joined({"\"two\nlines\"", "1", "2", "3", "GL", ""}),
        joined({"Stra\xC3\x9F"
                "e",
                "1", "2", "3", "GL", ""}),
        joined({"", "1", "2", "3", "GL", ""}),
        " P7 " + joined({"", " 1e2", "2 ", "+3", " GL", " 4\r"})};
    return rows[draw_() % rows.size()];
  }

  std::mt19937 draw_;
  char separator_;
  char mark_;
  int odd_in_;
};

// More than two chunks of 2 MiB.
constexpr std::size_t kLong = 120000;

TEST(CsvThreads, ALongFileOfSoundRows_csv_stretch_1) {
  const SourceFile file = text_file(Rows(1, ',', '.', 0).text(kLong));
  const std::string text = read_all_ways(file);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), kLong + 2);
  EXPECT_NE(text.find("\n120001|P119999|GL|"), std::string::npos);
}

TEST(CsvThreads, CommentsQuotesAndBlankRowsBetween_csv_rows_3) {
  for (const int odd_in : {3, 50, 5000})
    for (const char separator : {',', ';', '\t'}) {
      const auto text = read_all_ways(text_file(Rows(2, separator, '.', odd_in).text(kLong / 2)));
      EXPECT_NE(text.find("|P59998|"), std::string::npos);
    }
}

TEST(CsvThreads, DecimalCommasDecideForTheFile) {
  const std::string commas = Rows(3, ';', ',', 0).text(kLong / 2);
  const std::string one = read_all_ways(text_file(commas));
  EXPECT_NE(one.find("|P59999|"), std::string::npos);
  const std::string mixed = read_all_ways(text_file(commas + "M1;1.5;2;3;GL;\n"));
  EXPECT_EQ(mixed.substr(0, 14), "g.csv:60002:4:");
}

TEST(CsvThreads, CodesAndWindowsCountAlike) {
  SourceFile file = text_file(Rows(4, ',', '.', 70).text(kLong / 2));
  file.codes = {"GL"};
  file.unit = LengthUnit::UsSurveyFoot;
  PointsWanted wanted;
  wanted.keep = [](const GridPosition& p) { return p.at.easting.in_metres() < 100; };
  EXPECT_NE(read_all_ways(file, wanted).find("rows from here on"), std::string::npos);
}

// The text with a row after the first line break behind each of these shares of it.
std::string with_row_at(std::string text, const std::string& row) {
  for (const double share : {0.9, 0.5, 0.49, 0.1}) {
    const auto at = static_cast<std::size_t>(share * static_cast<double>(text.size()));
    text.insert(text.find('\n', at) + 1, row);
  }
  return text;
}

TEST(CsvThreads, FaultsAreTheSameLineForLine_points_csv_4) {
  const std::string text = Rows(5, ',', '.', 0).text(kLong / 2);
  for (const std::string fault :
       {"P1,1,2\n", "P1,1,2,3,GL,4,5\n", "P1,1,2,3x,GL,4\n", "P1,1,2,3,GL,-4\n", "P1,1,,3,GL,4\n",
        "point,e,n,h,code,sigma_plan_mm\n", "P1,1,2,\"3,GL,4\n", "P\xFF,1,2,3,GL,\n"}) {
    const std::string bad = with_row_at(text, fault);
    const std::string before = bad.substr(0, bad.find(fault, 50));
    const auto line = 1 + std::count(before.begin(), before.end(), '\n');
    const std::string place = "g.csv:" + std::to_string(line) + ":";
    EXPECT_EQ(read_all_ways(text_file(bad)).substr(0, place.size()), place) << fault;
  }
  PointsWanted unique;
  unique.names = Names::Unique;
  read_all_ways(text_file(text + ",1,2,3,GL,\n" + text), unique);
}

// 1 MiB is the longest row, wherever the chunks of the file end.
TEST(CsvThreads, TheLongestRowIsTheSame) {
  const std::string head = "point,e,n,h\n";
  for (const std::size_t size : {(std::size_t{1} << 20) - 6, (std::size_t{1} << 20) - 5})
    for (const std::size_t before : {std::size_t{0}, std::size_t{100}, std::size_t{40000}}) {
      std::string text = head;
      for (std::size_t i = 0; i < before; ++i) text += "P1,1,2,3\n";
      const std::string refused =
          read_all_ways(text_file(text + std::string(size, ' ') + ",1,2,3\n"));
      EXPECT_EQ(refused.find("a line of more than 1 MiB") != std::string::npos,
                size + 6 > (std::size_t{1} << 20));
    }
}

}  // namespace
}  // namespace squaredig::formats
