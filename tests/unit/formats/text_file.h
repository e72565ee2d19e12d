// A small file written for a test.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <string>

#include "formats/source_file.h"

namespace squaredig::testing {

// Writes the bytes to a file of this test's own; messages call it `name`.
inline formats::SourceFile text_file(const std::string& bytes, const std::string& name = "g.csv") {
  const auto* test = ::testing::UnitTest::GetInstance()->current_test_info();
  std::string path = ::testing::TempDir() + "squaredig_" + test->test_suite_name() + "_" +
                     test->name() + "_" + name;
  for (char& c : path)
    if (c == ' ') c = '_';
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
  formats::SourceFile source;
  source.path = path;
  source.name = name;
  return source;
}

}  // namespace squaredig::testing
