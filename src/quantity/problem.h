// The one error type. A Problem says where, what was found, what is needed and what to do; a
// Refusal carries every problem of an input at once and is the only exception that crosses rooms.
//
// Laws: problem.1  text() is one line: no control character of the input survives in it.
// Accuracy: texts are kept as given, but for control characters. Errors: it is them.
// Source: the house's own.
#pragma once

#include <exception>
#include <string>
#include <string_view>
#include <vector>

namespace squaredig {

// A place in an input file. Line and column count from 1; a fault of the whole file is at 1:1.
struct Place {
  std::string file;
  int line = 1;
  int column = 1;
  friend bool operator==(const Place&, const Place&) = default;
};

enum class ProblemKind {
  Input,   // the input is wrong: exit status 2
  Storage  // a file or disk could not be read or written: exit status 3
};

struct Problem {
  ProblemKind kind = ProblemKind::Input;
  Place place;
  std::string found;
  std::string needed;
  std::string remedy;
  // "file:line:column: found; needed; what to do"
  std::string text() const;
};

class Refusal : public std::exception {
 public:
  explicit Refusal(Problem problem) : problems_{std::move(problem)} {}
  explicit Refusal(std::vector<Problem> problems) : problems_(std::move(problems)) {}
  const std::vector<Problem>& problems() const { return problems_; }
  const char* what() const noexcept override { return "squaredig::Refusal"; }

 private:
  std::vector<Problem> problems_;
};

// Throws a Refusal of one input problem.
[[noreturn]] void refuse(Place place, std::string found, std::string needed, std::string remedy);

// Something that was found and needs a person, though the work could be done: exit status 1.
// `code` is a short fixed word for machines; `text` one plain sentence with place and amount.
struct Finding {
  std::string code;
  std::string text;
  friend bool operator==(const Finding&, const Finding&) = default;
};

// The text with control characters replaced by '?', cut at 80 characters with "...": so a label or
// cell from a file can be quoted inside one line.
std::string quoted(std::string_view raw);

}  // namespace squaredig
