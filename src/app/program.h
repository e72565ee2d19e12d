// The program: a command line in, an exit status out.
#pragma once

#include <string>
#include <vector>

namespace squaredig::app {

// Runs the command line (without the program's own name) and gives the exit status of ExitStatus.
int run_program(const std::vector<std::string>& arguments);

}  // namespace squaredig::app
