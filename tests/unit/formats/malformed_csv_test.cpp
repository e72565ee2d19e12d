// Public corpora of awkward CSV: csv-spectrum 2.0.0 (BSD-2) with its expected rows, and odd quoting
// of the GDAL autotest (MIT). Each file comes out as its corpus says, or gets the line that stands
// here.
#include <gtest/gtest.h>

#include <filesystem>

#include "formats/csv_rows.h"
#include "formats/input_file.h"
#include "formats/json_internal.h"
#include "formats/points_csv.h"
#include "refusal_text.h"
#include "shared_data.h"

namespace squaredig::formats {
namespace {

SourceFile shared(const std::string& file) {
  SourceFile source;
  source.path = squaredig::testing::shared_data("malformed/csv/" + file).string();
  source.name = std::filesystem::path(file).filename().string();
  return source;
}

// The rows as the corpus writes them: an object a row, by the names of the header.
Json objects_of(const SourceFile& source) {
  FaultList faults;
  CsvRows in(source, faults);
  std::vector<std::string> names;
  Json objects = Json::array();
  while (const CsvRow* row = in.next()) {
    if (names.empty()) {
      for (const CsvCell& cell : row->cells) names.emplace_back(cell.text);
      continue;
    }
    Json object = Json::object();
    for (std::size_t i = 0; i < row->cells.size(); ++i)
      object[i < names.size() ? names[i] : "beyond"] = std::string(row->cells[i].text);
    objects.push_back(object);
  }
  faults.throw_if_any();
  return objects;
}

TEST(MalformedCsv, SpectrumComesOutAsExpected) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/csv/csv-spectrum");
  for (const std::string name :
       {"comma_in_quotes", "empty", "empty_crlf", "escaped_quotes", "json", "newlines",
        "newlines_crlf", "quotes_and_newlines", "simple", "simple_crlf", "utf8"}) {
    const Json expected = Json::parse(read_whole(shared("csv-spectrum/" + name + ".json")));
    EXPECT_EQ(objects_of(shared("csv-spectrum/" + name + ".csv")), expected) << name;
  }
}

struct Verdict {
  const char* file;
  const char* lines;
};

TEST(MalformedCsv, OddQuotingIsRefusedWithItsPlace) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/csv");
  const std::string beside =
      ": text beside a quoted cell; a cell wholly inside its quotes, quotes inside it doubled; "
      "close "
      "the quote or double it\n";
  const std::string inside =
      ": a quote inside an unquoted cell; the whole cell in quotes, quotes inside it doubled; put "
      "the "
      "cell in quotes\n";
  const auto faults = [](const std::string& file) {
    return squaredig::testing::refusal_text([&] { objects_of(shared(file)); });
  };
  EXPECT_EQ(faults("csv-spectrum/location_coordinates.csv"),
            "location_coordinates.csv:2:12" + inside);
  EXPECT_EQ(faults("gdal_backslash_quote.csv"), "gdal_backslash_quote.csv:3:27" + inside);
}

TEST(MalformedCsv, AsPointsEachIsRefusedInWords) {
  SQUAREDIG_NEEDS_SHARED_DATA("malformed/csv");
  std::size_t files = 0;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(
           squaredig::testing::shared_data("malformed/csv"))) {
    if (entry.path().extension() != ".csv") continue;
    ++files;
    SourceFile source;
    source.path = entry.path().string();
    source.name = entry.path().filename().string();
    const std::string lines = squaredig::testing::refusal_text([&] { read_points_csv(source); });
    EXPECT_EQ(lines.rfind(source.name + ":1:1: no ", 0), 0U) << lines;
  }
  EXPECT_EQ(files, 16U);
}

}  // namespace
}  // namespace squaredig::formats
