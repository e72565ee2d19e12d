#include "app/check.h"

#include "app/refusals.h"
#include "app/stages.h"
#include "app/version.h"
#include "formats/check_json.h"
#include "job/check_lines.h"

namespace squaredig::app {
namespace {

// Every file of the job once, in the order of the job file's tables.
ResultHead head_of(const Inputs& inputs, const std::set<job::Stage>& stages) {
  ResultHead all = inputs.head(job::Stage::Ground);
  for (const job::Stage stage : stages) {
    const ResultHead head = inputs.head(stage);
    const auto add_new = [](auto& to, const auto& from, auto same) {
      for (const auto& item : from)
        if (std::none_of(to.begin(), to.end(), [&](const auto& old) { return same(old, item); }))
          to.push_back(item);
    };
    add_new(all.inputs, head.inputs, [](const auto& a, const auto& b) { return a.file == b.file; });
    add_new(all.cautions, head.cautions, std::equal_to<>());
    add_new(all.assumed, head.assumed, std::equal_to<>());
  }
  return all;
}

std::vector<formats::StageFound> stages_found(const job::Job& job) {
  std::vector<formats::StageFound> found;
  for (const job::Stage stage : {job::Stage::Field, job::Stage::Ground, job::Stage::Pegs,
                                 job::Stage::Dig, job::Stage::Base}) {
    found.push_back({job::words(stage), {}});
    for (const auto& problem : job::missing_for(stage, job))
      found.back().missing.push_back(problem.found);
  }
  return found;
}

ResultHead job_head(const JobFolder& job) {
  ResultHead head;
  head.job = job.job.job.name;
  head.inputs = {job.record()};
  head.assumed = job.job.assumed;
  head.cautions = job.job.cautions;
  return head;
}

}  // namespace

ExitStatus check(const Command& command) {
  Progress progress(command.progress, command.speech);
  progress.step("reading the job");
  const JobFolder job = open_job(command.target, command.threads);
  const auto stages = stages_named(job.job);
  ResultHead head = job_head(job);
  progress.step("reading the field files", job.meter);
  if (!stages.empty()) head = head_of(read_inputs(job, stages), stages);
  progress.finish();
  if (command.form == ResultForm::FilesAndJson) {
    Messages::print(formats::check_json(head, stages_found(job.job), kVersion));
    return ExitStatus::Done;
  }
  job::Job told = job.job;
  told.cautions = {};  // they are among those of the files
  std::string text;
  for (const auto& line : job::check_lines(told, {head.inputs, head.cautions})) text += line + "\n";
  Messages::print(text);
  return ExitStatus::Done;
}

}  // namespace squaredig::app
