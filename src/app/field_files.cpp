#include "app/field_files.h"

#include <algorithm>

#include "app/field_books.h"
#include "app/refusals.h"
#include "formats/compaction_csv.h"
#include "formats/landxml_read.h"
#include "formats/las_read.h"
#include "formats/lift_log_csv.h"
#include "formats/strings_csv.h"
#include "formats/tape_csv.h"

namespace squaredig::app {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

void tell_swapped(const formats::Extent& extent, const PointTable* control,
                  const formats::PlanColumns& columns) {
  if (control != nullptr) formats::check_swapped(extent, *control, columns);
}

bool holds(const ground::Region& region, GridPoint p) {
  return p.easting >= region.low.easting && p.easting <= region.high.easting &&
         p.northing >= region.low.northing && p.northing <= region.high.northing;
}

// One points file, its points added to those of `before`.
FromFiles<PointTable> read_one(const JobFolder& job, const job::FileSpec& file,
                               const PointsAsked& asked, PointTable before) {
  if (file.path == kFieldPoints && job.reduced) {
    auto reduced = points_of(*job.reduced, asked, std::move(before));
    for (const auto& point : reduced.value.points) reduced.extent.add(point.at.at);
    return reduced;
  }
  auto source = job.source(file);
  source.codes = asked.codes;
  formats::PointsWanted wanted;
  wanted.heights = asked.heights;
  wanted.names = asked.names;
  if (asked.window)
    wanted.keep = [window = *asked.window](const GridPosition& p) { return holds(window, p.at); };
  const std::string ending = ending_of(file, {".csv", ".txt", ".las", ".laz", ".xml"}, "points");
  if (ending == ".las" || ending == ".laz") {
    auto read = formats::read_las_points(source, wanted, std::move(before));
    tell_swapped(read.extent, asked.control, {file.place, file.place});
    return {std::move(read.points),
            {read.record},
            std::move(read.cautions),
            std::move(read.assumed),
            read.extent};
  }
  if (ending == ".xml") {
    auto read = formats::read_landxml_points(source, wanted, std::move(before));
    tell_swapped(read.extent, asked.control, {file.place, file.place});
    return {std::move(read.points),
            {read.record},
            std::move(read.cautions),
            std::move(read.assumed),
            read.extent};
  }
  auto read = formats::read_points_csv(source, wanted, std::move(before));
  tell_swapped(read.extent, asked.control, read.columns);
  return {std::move(read.points), {read.record}, std::move(read.cautions), {}, read.extent};
}

FromFiles<std::vector<SurveyString>> read_one(const JobFolder& job, const job::FileSpec& file,
                                              formats::Heights heights, const PointTable* control) {
  if (ending_of(file, {".csv", ".txt", ".xml"}, "strings") == ".xml") {
    auto read = formats::read_landxml_breaklines(job.source(file), heights);
    tell_swapped(read.extent, control, {file.place, file.place});
    return {std::move(read.strings),
            {read.record},
            std::move(read.cautions),
            std::move(read.assumed),
            read.extent};
  }
  auto read = formats::read_strings_csv(job.source(file), heights);
  tell_swapped(read.extent, control, read.columns);
  return {std::move(read.strings), {read.record}, std::move(read.cautions), {}, read.extent};
}

}  // namespace

std::string ending_of(const job::FileSpec& file, const std::vector<std::string>& wanted,
                      const std::string& what) {
  std::string ending = std::filesystem::path(file.path).extension().string();
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  if (std::find(wanted.begin(), wanted.end(), ending) == wanted.end())
    refuse(file.place, squaredig::quoted(file.path) + " as " + what,
           "a file whose name ends in " + joined(wanted), "convert the file, or name another");
  return ending;
}

FromFiles<SurfaceMesh> read_surface(const JobFolder& job, const job::FileSpec& file) {
  ending_of(file, {".xml"}, "a surface");
  auto read = formats::read_landxml_surface(job.source(file));
  return {std::move(read.mesh), {read.record}, std::move(read.cautions), std::move(read.assumed)};
}

FromFiles<std::vector<pegs::TapedLength>> read_tape(const JobFolder& job,
                                                    const job::FileSpec& file) {
  ending_of(file, {".csv", ".txt"}, "taped lengths");
  auto read = formats::read_tape_csv(job.source(file));
  return {std::move(read.lengths), {read.record}, std::move(read.cautions)};
}

FromFiles<std::vector<CompactionTest>> read_compaction(const JobFolder& job,
                                                       const job::FileSpec& file) {
  ending_of(file, {".csv", ".txt"}, "compaction tests");
  auto read = formats::read_compaction_csv(job.source(file));
  return {std::move(read.tests), {read.record}, std::move(read.cautions)};
}

FromFiles<std::vector<fill::LiftRecord>> read_lift_log(const JobFolder& job,
                                                       const job::FileSpec& file) {
  ending_of(file, {".csv", ".txt"}, "a lift log");
  auto read = formats::read_lift_log_csv(job.source(file));
  return {std::move(read.lifts), {read.record}, std::move(read.cautions)};
}

FromFiles<PointTable> read_points(const JobFolder& job, const std::vector<job::FileSpec>& files,
                                  const PointsAsked& asked) {
  FromFiles<PointTable> all;
  Refusals refusals;
  for (const auto& file : files)
    refusals.gather([&] {
      auto read = read_one(job, file, asked, std::move(all.value));
      all.value = all.take(std::move(read));
    });
  refusals.throw_if_any();
  return all;
}

FromFiles<std::vector<SurveyString>> read_strings(const JobFolder& job,
                                                  const std::vector<job::FileSpec>& files,
                                                  formats::Heights heights,
                                                  const PointTable* control) {
  FromFiles<std::vector<SurveyString>> all;
  Refusals refusals;
  for (const auto& file : files)
    refusals.gather([&] {
      auto strings = all.take(read_one(job, file, heights, control));
      all.value.insert(all.value.end(), std::make_move_iterator(strings.begin()),
                       std::make_move_iterator(strings.end()));
    });
  refusals.throw_if_any();
  return all;
}

}  // namespace squaredig::app
