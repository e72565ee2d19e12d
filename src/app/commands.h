// What each command does.
#pragma once

#include "app/command_line.h"
#include "app/exit_status.h"

namespace squaredig::app {

ExitStatus run_command(const Command& command);

}  // namespace squaredig::app
