// Fuzzer of points and strings in CSV. Points are read row by row and in stretches, and both must
// say the same.
#include "formats/points_csv.h"
#include "formats/strings_csv.h"
#include "fuzz/fuzz_target.h"
#include "quantity/number_text.h"

namespace squaredig::fuzz {
namespace {

std::string told(const PointTable& table) {
  std::string text;
  for (std::size_t i = 0; i < table.size(); ++i) {
    const SurveyPoint& p = table.points[i];
    for (const double value :
         {p.at.at.easting.in_metres(), p.at.at.northing.in_metres(), p.at.height.in_metres(),
          static_cast<double>(p.sigma_plan_mm), static_cast<double>(p.sigma_height_mm)})
      text += shortest(value) + ' ';
    text.append(table.label(i)).append(table.code(i));
    text += std::to_string(p.line) + (p.has_height ? "\n" : " plan\n");
  }
  return text;
}

// What a reading tells, or why it refuses.
std::string read(const formats::SourceFile& file, const formats::PointsWanted& wanted) try {
  const auto points = formats::read_points_csv(file, wanted);
  sound(points.points);
  return points.record.sha256 + std::to_string(points.record.read) + told(points.points);
} catch (const Refusal& refusal) {
  std::string text;
  for (const auto& problem : refusal.problems()) text += problem.text() + '\n';
  return text;
}

void read_both_ways(const formats::SourceFile& file, const formats::PointsWanted& wanted_points) {
  formats::SourceFile shared = file;
  shared.together = do_in_turn;
  wanted(read(file, wanted_points) == read(shared, wanted_points));
}

}  // namespace

void read_input(const formats::SourceFile& file) {
  reading([&] { sound(formats::read_points_csv(file).points); });
  read_both_ways(file, {});
  read_both_ways(file, {formats::Heights::Optional, formats::Names::Unique});
  reading([&] { sound(formats::read_strings_csv(file, formats::Heights::Needed).strings); });
}

}  // namespace squaredig::fuzz
