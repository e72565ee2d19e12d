// The broken job files of tests/refusals through the reader: each gets its exact lines.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "job/job.h"

namespace squaredig::job {
namespace {

namespace fs = std::filesystem;

std::string contents(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

std::set<fs::path> cases() {
  std::set<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(fs::path(SQUAREDIG_SOURCE) / "tests/refusals"))
    if (entry.path().filename().string().substr(0, 4) == "job-") folders.insert(entry.path());
  return folders;
}

std::string lines_for(const std::string& text) {
  try {
    read_job(text, "job.toml");
    return "no fault\n";
  } catch (const Refusal& refusal) {
    std::string lines;
    for (const Problem& problem : refusal.problems()) lines += problem.text() + "\n";
    return lines;
  }
}

TEST(Refusals, OfJobFilesAreWordForWord_job_2) {
  const auto folders = cases();
  ASSERT_GE(folders.size(), 40U);
  for (const auto& folder : folders)
    EXPECT_EQ(lines_for(contents(folder / "job.toml")), contents(folder / "expected.txt"))
        << folder.filename();
}

TEST(Refusals, EachLineHasPlaceFoundNeededAndRemedy) {
  for (const auto& folder : cases()) {
    std::istringstream lines(contents(folder / "expected.txt"));
    for (std::string line; std::getline(lines, line);) {
      EXPECT_EQ(std::count(line.begin(), line.end(), ';'), 2) << line;
      EXPECT_EQ(line.substr(0, 9), "job.toml:") << line;
    }
  }
}

}  // namespace
}  // namespace squaredig::job
