#include "app/commands.h"

#include <algorithm>

#include "app/check.h"
#include "app/new_job.h"
#include "app/output_set.h"
#include "app/stages.h"

namespace squaredig::app {
namespace {

using job::Stage;

// The output folder is exchanged as a whole, so it must not be the job's own folder or above it.
void check_out(const std::filesystem::path& out, const JobFolder& job) {
  std::error_code error;
  const auto real_out = std::filesystem::weakly_canonical(std::filesystem::absolute(out), error);
  auto above = std::filesystem::weakly_canonical(std::filesystem::absolute(job.folder), error);
  for (;; above = above.parent_path()) {
    if (above == real_out)
      refuse({"command line", 1, 1}, "--out " + out.string() + " holds the job itself",
             "a folder for the results alone", "choose another --out, such as a folder in it");
    if (above == above.parent_path()) return;
  }
}

std::set<Stage> stages_of(const std::string& verb, const JobFolder& job) {
  for (const Stage stage : job::kStages)
    if (verb == job::words(stage)) return {stage};
  auto named = stages_named(job.job);
  if (named.empty()) throw Refusal(job::missing_for(Stage::Ground, job.job));
  return named;
}

// The object of one stage as it is in its file; of a run, one object with a member for each stage.
std::string printed_object(const std::string& verb, const std::vector<StageOutput>& outputs) {
  if (verb != "run") return outputs.front().json;
  std::string text = "{\n";
  for (const auto& output : outputs) {
    text += std::string(text.size() > 2 ? ",\n" : "") + "\"" + job::words(output.stage) +
            "\": " + output.json;
    text.pop_back();  // the line feed at the end of the file
  }
  return text + "\n}\n";
}

// The files' bytes move into the set.
void write_outputs(const std::filesystem::path& out, std::vector<StageOutput>& outputs,
                   unsigned threads) {
  OutputSet set(out);
  for (auto& output : outputs) {
    for (const auto& name : file_names(output.stage)) set.own(name);
    for (auto& [name, bytes] : output.files) set.add(name, std::move(bytes));
    for (auto& [name, pieces] : output.large_files) set.add(name, std::move(pieces));
  }
  set.commit(threads);
}

// The stages' lines under the job's name, and where the results are.
std::string summary_text(const JobFolder& job, const std::vector<StageOutput>& outputs,
                         const std::filesystem::path& out, ExitStatus status) {
  std::string text = job.job.job.name + "\n";
  for (const auto& output : outputs)
    for (const auto& line : output.summary) text += line + "\n";
  const auto folder = out.lexically_normal().string();
  return text +
         (status == ExitStatus::Done
              ? "done; results in " + folder + "\n"
              : "done, and something needs a person (exit status 1); results in " + folder + "\n");
}

ExitStatus run_stages(const Command& command, const Messages& messages) {
  Progress progress(command.progress, command.speech);
  progress.step("reading the job");
  const JobFolder job = open_job(command.target, command.threads);
  const auto out = job.out(command.out);
  check_out(out, job);
  const auto wanted = stages_of(command.verb, job);
  progress.step("reading the field files", job.meter);
  const Inputs inputs = read_inputs(job, wanted);
  Stages stages(inputs, progress, command.threads);
  stages.run_all(wanted);
  std::vector<StageOutput> outputs;
  outputs.reserve(wanted.size());
  ExitStatus status = ExitStatus::Done;
  for (const Stage stage : wanted) {
    outputs.push_back(stages.take(stage));
    status = worse(status, outputs.back().status);
  }
  progress.step("writing the results");
  write_outputs(out, outputs, command.threads);
  progress.finish();
  for (const auto& output : outputs)
    for (const auto& remark : output.remarks) messages.tell(remark);
  Messages::print(command.form == ResultForm::FilesAndJson
                      ? printed_object(command.verb, outputs)
                      : summary_text(job, outputs, out, status));
  return status;
}

}  // namespace

ExitStatus run_command(const Command& command) {
  const Messages messages(command.speech);
  if (command.verb == "new") {
    new_job(command.target, messages);
    return ExitStatus::Done;
  }
  if (command.verb == "check") return check(command);
  return run_stages(command, messages);
}

}  // namespace squaredig::app
