// What the program says: results on standard output, everything else on standard error. The one
// writer of both streams.
#pragma once

#include <string_view>

#include "quantity/problem.h"

namespace squaredig::app {

enum class Speech { Normal, Quiet };

class Messages {
 public:
  explicit Messages(Speech speech) : speech_(speech) {}
  // A note on standard error; nothing when quiet.
  void tell(std::string_view text) const;
  // A problem on standard error, quiet or not: "file:line:column: found; needed; what to do".
  static void report(const Problem& problem);
  // A line on standard error, quiet or not.
  static void complain(std::string_view text);
  // Text on standard output. Refuses (Storage) when it cannot be written.
  static void print(std::string_view text);
  // Rewrites the progress line of a terminal; an empty text wipes it.
  static void progress_line(std::string_view text);
  static bool error_is_terminal();
  Speech speech() const { return speech_; }

 private:
  Speech speech_;
};

}  // namespace squaredig::app
