// The command line as typed, checked as far as that can be done without opening anything.
//
// Errors: Refusal of kind Input for an unknown command or option, a missing or doubled argument, or
// a
//   value out of range; place is the command line itself.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/progress.h"

namespace squaredig::app {

enum class ResultForm { Files, FilesAndJson };

struct Command {
  std::string verb;              // one of command_names()
  std::filesystem::path target;  // JOB, or DIR of `new`
  std::optional<std::filesystem::path> out;
  ResultForm form = ResultForm::Files;
  Speech speech = Speech::Normal;
  ProgressMode progress = ProgressMode::Auto;
  unsigned threads = 0;  // 0: as many as the machine has
};

// Text to be printed instead of doing anything: --help, --version.
struct Printed {
  std::string text;
};

std::variant<Command, Printed> parse_command_line(const std::vector<std::string>& arguments);

}  // namespace squaredig::app
