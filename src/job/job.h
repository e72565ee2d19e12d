// The job file as checked: one value with everything a run needs but the contents of its files.
//
// What: every table of the job file, each present only when the file has it; references to files
//   as written, with their places; what was assumed because a key is absent.
// Frame and units: the job's grid, metres; lengths as they stand in the job file.
// Laws: job.1 a Job holds only finite values inside the ranges docs/job-file.md states; job.2 every
//   fault of a file is told at once, in the order of the file; job.3 the same text gives the same
//   Job.
// Errors: read_job throws a Refusal with all faults, each with line and column.
// Source: TOML 1.0 for the syntax; the keys are the house's own, docs/job-file.md.
#pragma once

#include <map>

#include "base/base_input.h"
#include "design/design_input.h"
#include "dig/dig_input.h"
#include "field/field_input.h"
#include "fill/fill_input.h"
#include "ground/ground_input.h"
#include "job/file_spec.h"
#include "pegs/pegs_input.h"
#include "record/record_input.h"

namespace squaredig::job {

struct JobTable {
  std::string name;
  std::string out;  // a folder below the job file's, as written
  std::optional<std::chrono::year_month_day> date;
  std::optional<std::string> revision;
  std::optional<std::string> drawing;
  std::optional<std::string> prepared_by;
  Place place;
};

struct GridTable {
  std::optional<int> crs;      // EPSG code; nothing: local coordinates
  std::optional<int> heights;  // EPSG code; nothing: local heights
  std::optional<FileSpec> geoid;
  design::PlanLengths plan_lengths = design::PlanLengths::Grid;
  std::optional<Ratio> scale_factor;  // grid / ground; nothing: to be computed where it is needed
  Place place;
};

struct ControlTable {
  FileSpec points;
  Place place;
};

struct FieldTable {
  field::FieldInput settings;
  std::vector<FileSpec> stations;
  std::vector<FileSpec> levels;
  std::vector<FileSpec> gnss;
  std::optional<FileSpec> two_peg;
  std::optional<FileSpec> fit;
};

struct GroundTable {
  ground::GroundInput settings;
  std::vector<FileSpec> points;
  std::vector<FileSpec> breaklines;
  std::optional<FileSpec> outline;
  std::optional<FileSpec> surface;  // instead of points
  std::vector<std::string> codes;   // empty: every code
  Place place;
};

struct SiteTable {
  design::SiteInput settings;
  std::vector<FileSpec> keep_out;
  std::vector<FileSpec> services;
};

struct TankTable {
  design::TankInput settings;
  std::optional<FileSpec> outline;  // where the outline is a strings file
};

struct PegsTable {
  pegs::PegsInput settings;
  std::optional<FileSpec> as_set;
  std::optional<FileSpec> tape;
};

struct DigTable {
  design::PitInput pit;
  dig::DigInput settings;
};

// A survey with a name: during the dig, or of a layer as built.
struct NamedSurvey {
  std::string name;
  FileSpec points;
  Place place;
};

struct BaseTable {
  base::BaseInput settings;
  std::vector<FileSpec> points;
  std::vector<FileSpec> after_repair;
  std::optional<FileSpec> tests;
  std::vector<FileSpec> bedding_points;
};

struct FillTable {
  fill::FillInput settings;
  std::optional<FileSpec> finish;  // where the finish is a surface file
  std::vector<NamedSurvey> layers;
  std::optional<FileSpec> lift_log;
  std::optional<FileSpec> tests;
};

struct Job {
  std::string file;
  JobTable job;
  std::optional<GridTable> grid;
  std::optional<ControlTable> control;
  std::optional<FieldTable> field;
  std::optional<GroundTable> ground;
  std::optional<SiteTable> site;
  std::optional<TankTable> tank;
  std::optional<design::BeddingInput> bedding;
  std::optional<PegsTable> pegs;
  std::optional<DigTable> dig;
  std::vector<NamedSurvey> progress;
  std::optional<design::LaserInput> laser;
  std::optional<BaseTable> base;
  std::optional<FillTable> fill;
  std::optional<fill::WaterInput> water;
  std::vector<std::string> assumed;   // what was taken because a key is absent, one sentence each
  std::vector<std::string> cautions;  // what the reader of every sheet should know of the job file
  std::map<std::string, Place> places;  // of each key: "tank.corner_b", "dig.ramp[1].slope"

  // The place of a key, or of the nearest table above it that the file has.
  Place place_of(std::string_view key) const;
};

// `file` is how the job file is named in messages, usually "job.toml".
Job read_job(std::string_view text, std::string_view file);

enum class Stage { Field, Ground, Pegs, Dig, Base, Fill, Record };
constexpr const char* words(Stage stage) {
  switch (stage) {
    case Stage::Field:
      return "field";
    case Stage::Ground:
      return "ground";
    case Stage::Pegs:
      return "pegs";
    case Stage::Dig:
      return "dig";
    case Stage::Base:
      return "base";
    case Stage::Fill:
      return "fill";
    default:
      return "record";
  }
}
constexpr Stage kStages[] = {Stage::Field, Stage::Ground, Stage::Pegs,  Stage::Dig,
                             Stage::Base,  Stage::Fill,   Stage::Record};

// The faults for a stage whose tables the job file lacks; empty when it can be started.
std::vector<Problem> missing_for(Stage stage, const Job& job);

}  // namespace squaredig::job
