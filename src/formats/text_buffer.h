// The bytes of a text file that are not yet taken, read a chunk at a time.
//
// What: `rest` is what was read and not taken; `more` reads on behind it; `take` lets go of its
//   first bytes.
// Requires: a view of the rest lives until the next `more`.
// Accuracy: memory is what is not taken and one chunk; a small file's chunk is the file itself.
// Errors: those of InputFile.
// Source: the house's own.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "formats/input_file.h"

namespace squaredig::formats {

class TextBuffer {
 public:
  explicit TextBuffer(const SourceFile& source);

  std::string_view rest() const { return {bytes_.data() + begin_, end_ - begin_}; }
  void more();
  void take(std::size_t bytes) { begin_ += bytes; }
  // The file has nothing behind the rest.
  bool ended() const { return ended_; }
  std::string sha256() { return file_.sha256(); }

 private:
  InputFile file_;
  std::size_t chunk_;
  std::vector<char> bytes_;
  std::size_t begin_ = 0;
  std::size_t end_ = 0;
  bool ended_ = false;
};

}  // namespace squaredig::formats
