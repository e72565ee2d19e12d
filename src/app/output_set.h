// The files of one stage, appearing in the output folder together or not at all.
//
// What: collects named files; commit() fills a sibling of the output folder with them and with hard
//   links to the files of other stages, flushes it, and swaps it in by one rename.
// Requires: the folder that holds the output folder exists; the output folder holds files alone.
// Laws: output_set.1  at every moment the output folder holds the files of one whole commit, also
//   when the program is killed; output_set.2  files not owned by the stage stay as they are;
//   output_set.3  an owned file that is not added again is gone afterwards; output_set.4  nothing
//   is left beside the output folder, or the next commit removes it.
// Errors: Refusal of kind Storage when a file or disk cannot be written; earlier results are whole.
// Source: Linux man-pages rename(2) (RENAME_EXCHANGE), fsync(2), flock(2).
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "formats/file_pieces.h"

namespace squaredig::app {

class OutputSet {
 public:
  explicit OutputSet(std::filesystem::path out) : out_(std::move(out)) {}
  // A file of the stage. Requires: a plain file name, given once.
  void add(std::string name, std::string bytes);
  // The same of a large one, made piece by piece while it is written.
  void add(std::string name, formats::FilePieces pieces);
  // File names the stage may write: those of an earlier run that are not added again are dropped.
  void own(std::string name) { owned_.push_back(std::move(name)); }
  // With so many threads for what is made while it is written (0: as many as the machine has).
  void commit(unsigned threads) const;
  const std::map<std::string, std::string>& files() const { return files_; }
  const std::filesystem::path& folder() const { return out_; }

 private:
  void write_files(const std::filesystem::path& folder) const;
  void write_large_files(const std::filesystem::path& folder, unsigned threads) const;

  std::filesystem::path out_;
  std::map<std::string, std::string> files_;
  std::map<std::string, formats::FilePieces> large_files_;
  std::vector<std::string> owned_;
};

}  // namespace squaredig::app
