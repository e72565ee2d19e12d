#include "app/field_files.h"

#include <algorithm>

#include "app/field_books.h"
#include "app/refusals.h"
#include "app/survey_readers.h"
#include "formats/compaction_csv.h"
#include "formats/lift_log_csv.h"
#include "formats/tape_csv.h"

namespace squaredig::app {
namespace {

void tell_swapped(const formats::Extent& extent, const PointTable* control,
                  const formats::PlanColumns& columns) {
  if (control != nullptr) formats::check_swapped(extent, *control, columns);
}

// A table names its columns; for other files the place is the job's.
formats::PlanColumns columns_of(const formats::PlanColumns& named, const job::FileSpec& file) {
  return named.easting == named.northing ? formats::PlanColumns{file.place, file.place} : named;
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
  auto read = points_of_file(file, source, wanted, std::move(before));
  tell_swapped(read.extent, asked.control, columns_of(read.columns, file));
  return {std::move(read.points),
          {read.record},
          std::move(read.cautions),
          std::move(read.assumed),
          read.extent};
}

FromFiles<std::vector<SurveyString>> read_one(const JobFolder& job, const job::FileSpec& file,
                                              formats::Heights heights, const PointTable* control) {
  auto read = strings_of_file(file, job.source(file), heights);
  tell_swapped(read.extent, control, columns_of(read.columns, file));
  return {std::move(read.strings),
          {read.record},
          std::move(read.cautions),
          std::move(read.assumed),
          read.extent};
}

}  // namespace

bool holds(const ground::Region& region, GridPoint p) {
  return p.easting >= region.low.easting && p.easting <= region.high.easting &&
         p.northing >= region.low.northing && p.northing <= region.high.northing;
}

FromFiles<SurfaceMesh> read_surface(const JobFolder& job, const job::FileSpec& file,
                                    const PointTable* control) {
  auto read = surface_of_file(file, job.source(file));
  tell_swapped(read.extent, control, {file.place, file.place});
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
