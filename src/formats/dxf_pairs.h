// DXF in, as a stream of pairs: a group code and its value, each on a line of its own.
//
// What: pairs in the order of the file with the line of each value. Line breaks are LF or CRLF; a
//   UTF-8 byte order mark is passed over. Comments (code 999) are left out.
// Accuracy: memory is one chunk of the file.
// Errors: a binary drawing, a line over 64 KiB, a group code that is no whole number and a code
//   without a value go to the list of faults and end the reading.
// Source: DXF reference, "Group codes in numerical order"; release 12 and later.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "formats/fault_list.h"
#include "formats/text_buffer.h"

namespace squaredig::formats {

struct DxfPair {
  int code = 0;
  std::string value;  // without blanks at its ends where the code is of a number or keyword
  int line = 0;       // of the value
};

class DxfPairs {
 public:
  DxfPairs(const SourceFile& source, FaultList& faults);

  // The next pair, or null at the end of the file or behind a fault.
  const DxfPair* next();
  int line() const { return line_; }
  std::string sha256() { return bytes_.sha256(); }

 private:
  std::optional<std::string_view> line_of_text();
  void fault(std::string found, std::string needed);

  TextBuffer bytes_;
  std::string name_;
  FaultList& faults_;
  bool broken_ = false;
  int line_ = 0;
  DxfPair pair_;
};

}  // namespace squaredig::formats
