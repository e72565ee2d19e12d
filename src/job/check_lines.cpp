#include "job/check_lines.h"

#include "job/describe.h"
#include "job/left_out.h"

namespace squaredig::job {
namespace {

constexpr std::size_t kRowsShown = 5;

std::string counted(std::size_t n, const char* one) {
  return std::to_string(n) + " " + one + (n == 1 ? "" : "s");
}

void add_file(const InputRecord& file, std::vector<std::string>& lines) {
  // a file that is not a table of rows has no counts
  if (file.read == 0 && file.used == 0 && file.set_aside.empty()) {
    lines.push_back("  " + file.file);
    return;
  }
  lines.push_back("  " + file.file + ": " + counted(file.read, "row") + " read, " +
                  std::to_string(file.used) + " used, " + std::to_string(file.set_aside.size()) +
                  " set aside");
  for (std::size_t i = 0; i < file.set_aside.size() && i < kRowsShown; ++i)
    lines.push_back("    line " + std::to_string(file.set_aside[i].line) + ": " +
                    file.set_aside[i].why);
  if (file.set_aside.size() > kRowsShown)
    lines.push_back("    and " + std::to_string(file.set_aside.size() - kRowsShown) + " more");
}

void add_part(const std::string& title, const std::vector<std::string>& items,
              std::vector<std::string>& lines) {
  if (items.empty()) return;
  lines.push_back(title);
  for (const auto& item : items) lines.push_back("  " + item);
}

void add_stage(Stage stage, const Job& job, std::vector<std::string>& lines) {
  const auto missing = missing_for(stage, job);
  std::string line = "  " + std::string(words(stage)) + ": ";
  if (missing.empty()) {
    lines.push_back(line + "its tables are there");
    for (const auto& phrase : left_out(stage, job)) lines.push_back("    " + phrase);
    return;
  }
  line += "cannot be run";
  for (const auto& problem : missing)
    line += (&problem == missing.data() ? ": " : ", ") + problem.found;
  lines.push_back(line);
}

}  // namespace

std::vector<std::string> check_lines(const Job& job, const FilesFound& found) {
  std::vector<std::string> lines{job.job.name};
  add_part("Found in " + job.file, described(job), lines);
  if (!found.files.empty()) lines.push_back("Files");
  for (const auto& file : found.files) add_file(file, lines);
  add_part("Assumed", job.assumed, lines);
  std::vector<std::string> cautions = job.cautions;
  cautions.insert(cautions.end(), found.cautions.begin(), found.cautions.end());
  add_part("Cautions", cautions, lines);
  lines.push_back("Stages");
  for (const Stage stage : kStages) add_stage(stage, job, lines);
  return lines;
}

}  // namespace squaredig::job
