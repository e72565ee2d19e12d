// The commands the program has, in the order of the work.
#pragma once

#include <string>
#include <vector>

namespace squaredig::app {

struct CommandName {
  std::string verb;
  std::string help;
  std::string target;  // JOB or DIR
  std::string target_help;
};

const std::vector<CommandName>& command_names();

}  // namespace squaredig::app
