// A small file written for a test.
#pragma once

#include <fstream>
#include <string>

#include "formats/source_file.h"
#include "temporary_folder.h"

namespace squaredig::testing {

// Writes the bytes to a file of that name in a folder of this run's own; messages call it `name`.
inline formats::SourceFile text_file(const std::string& bytes, const std::string& name = "g.csv") {
  static const TemporaryFolder folder;
  formats::SourceFile source;
  source.path = (folder.path() / name).string();
  source.name = name;
  std::ofstream(source.path, std::ios::binary | std::ios::trunc) << bytes;
  return source;
}

}  // namespace squaredig::testing
