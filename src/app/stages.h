// The stages, each run from the inputs that were read, sharing one ground and one excavation.
//
// What: the result of a stage as its files, the object it prints, the lines people read, and the
// exit
//   status it deserves.
// Errors: Refusal where the input is wrong; nothing is written here.
#pragma once

#include <map>
#include <memory>
#include <mutex>

#include "app/exit_status.h"
#include "app/inputs.h"
#include "app/progress.h"
#include "app/summary.h"
#include "design/excavation.h"
#include "formats/file_pieces.h"
#include "ground/whole_survey.h"
#include "ground/windowed_survey.h"

namespace squaredig::app {

struct StageOutput {
  job::Stage stage = job::Stage::Ground;
  ExitStatus status = ExitStatus::Done;
  std::string json;                          // also among the files
  std::map<std::string, std::string> files;  // name and bytes
  std::map<std::string, formats::FilePieces> large_files = {};
  Lines summary;
  Lines remarks;
};

// What the stages found, for the record.
struct StageResults {
  std::optional<pegs::PegsResult> pegs;
  std::optional<dig::DigResult> dig;
  std::optional<base::BaseResult> base;
  std::optional<fill::FillResult> fill;
};

class Stages {
 public:
  // With so many threads (0: as many as the machine has).
  Stages(const Inputs& inputs, Progress& progress, unsigned threads)
      : inputs_(inputs), progress_(progress), threads_(threads) {}
  // Runs the stages; once.
  void run_all(const std::set<job::Stage>& stages);
  // The output of a stage that was run, given away: the last that is asked of it. Asked of all that
  // were run, as the whole ground goes into the output of its stage.
  StageOutput take(job::Stage stage);

 private:
  const StageOutput& run(job::Stage stage);
  StageOutput run_field();
  StageOutput run_ground();
  StageOutput run_pegs();
  StageOutput run_dig();
  StageOutput run_base();
  StageOutput run_fill();
  StageOutput run_record();
  StageOutput made(job::Stage stage);
  geometry::SiteFrame frame() const;
  ground::WholeSurvey& whole_survey();
  ground::Survey& survey();
  const design::Excavation& excavation();

  const Inputs& inputs_;
  Progress& progress_;
  unsigned threads_;
  std::mutex building_;  // of the whole ground, which one stage builds and others may wait for
  std::unique_ptr<ground::WholeSurvey> whole_;
  std::unique_ptr<ground::WindowedSurvey> window_;
  std::unique_ptr<design::Excavation> excavation_;
  std::optional<ground::GroundResult> examined_;
  std::map<job::Stage, StageOutput> done_;
  StageResults results_;
};

// The files a stage may write: what it does not write this time is an earlier run's.
std::vector<std::string> file_names(job::Stage stage);
// The stages the program has whose tables the job names.
std::set<job::Stage> stages_named(const job::Job& job);

}  // namespace squaredig::app
