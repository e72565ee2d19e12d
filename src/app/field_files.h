// The field files a job names, read through the formats room: values with the record of each file.
//
// Errors: one Refusal with the faults of all the files asked for together.
#pragma once

#include <string>
#include <vector>

#include "app/job_folder.h"
#include "formats/points_csv.h"
#include "ground/survey.h"
#include "quantity/points.h"

namespace squaredig::app {

// What files held, the record of each, and what their reader wants said.
template <class Value>
struct FromFiles {
  Value value;
  std::vector<InputRecord> records = {};
  std::vector<std::string> cautions = {};
  std::vector<std::string> assumed = {};
  formats::Extent extent = {};  // of all that was read, kept or not

  template <class Other>
  Other take(FromFiles<Other> other) {
    records.insert(records.end(), other.records.begin(), other.records.end());
    cautions.insert(cautions.end(), other.cautions.begin(), other.cautions.end());
    assumed.insert(assumed.end(), other.assumed.begin(), other.assumed.end());
    extent.add(other.extent);
    return std::move(other.value);
  }
};

// How points files are read: which codes, and against which control easting and northing are told
// apart.
struct PointsAsked {
  std::vector<std::string> codes = {};
  formats::Names names = formats::Names::Told;
  formats::Heights heights = formats::Heights::Needed;
  const PointTable* control = nullptr;
  std::optional<ground::Region> window = std::nullopt;  // points outside are counted, not kept
};

// True where the point lies in the region or on its edge.
bool holds(const ground::Region& region, GridPoint point);

FromFiles<PointTable> read_points(const JobFolder& job, const std::vector<job::FileSpec>& files,
                                  const PointsAsked& asked);
FromFiles<std::vector<SurveyString>> read_strings(const JobFolder& job,
                                                  const std::vector<job::FileSpec>& files,
                                                  formats::Heights heights,
                                                  const PointTable* control);

// A ready triangulated surface, its record counting faces.
FromFiles<SurfaceMesh> read_surface(const JobFolder& job, const job::FileSpec& file,
                                    const PointTable* control);

FromFiles<std::vector<pegs::TapedLength>> read_tape(const JobFolder& job,
                                                    const job::FileSpec& file);
FromFiles<std::vector<CompactionTest>> read_compaction(const JobFolder& job,
                                                       const job::FileSpec& file);

FromFiles<std::vector<fill::LiftRecord>> read_lift_log(const JobFolder& job,
                                                       const job::FileSpec& file);

}  // namespace squaredig::app
