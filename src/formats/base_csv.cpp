#include "formats/base_csv.h"

#include "formats/csv_text.h"

namespace squaredig::formats {
namespace {

void judged_row(CsvText& csv, const base::JudgedPoint& p) {
  csv.label(p.point).place(p.at).label(p.code);
  csv.number(p.dig_level.in_metres()).millimetres(p.deviation).millimetres(p.uncertainty);
  csv.word(words(p.verdict)).word(p.finding);
  csv.metres(p.along_ab).metres(p.across_ab);
  csv.label(p.place.file).count(p.place.line).end_row();
}

void aside_row(CsvText& csv, const base::PointAside& p) {
  csv.label(p.point).place(p.at).blank();
  csv.blank().blank().blank();
  csv.word("set aside").label(p.why);
  csv.blank().blank();
  csv.label(p.place.file).count(p.place.line).end_row();
}

}  // namespace

std::string base_csv(const base::BaseResult& result) {
  CsvText csv({"point", "easting", "northing", "height", "code", "dig_level", "deviation_mm",
               "uncertainty_mm", "verdict", "finding", "along_ab", "across_ab", "file", "line"});
  for (const base::JudgedPoint& p : result.points) judged_row(csv, p);
  for (const base::PointAside& p : result.aside) aside_row(csv, p);
  return csv.take();
}

}  // namespace squaredig::formats
