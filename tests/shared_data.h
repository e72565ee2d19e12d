// Real survey files stand beside the project, not in it: ../shared/data from the project's folder.
// A test that wants one calls SQUAREDIG_NEEDS_SHARED_DATA first, and skips aloud without it.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace squaredig::testing {
inline std::filesystem::path shared_data(const std::string& file) {
  return std::filesystem::path(SQUAREDIG_SOURCE).parent_path() / "shared" / "data" / file;
}
}  // namespace squaredig::testing

#define SQUAREDIG_NEEDS_SHARED_DATA(file)                              \
  if (!std::filesystem::exists(squaredig::testing::shared_data(file))) \
  GTEST_SKIP() << "skipped: no shared data file " << (file)
