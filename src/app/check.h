// `squaredig check JOB`: reads everything, computes nothing.
#pragma once

#include "app/command_line.h"
#include "app/exit_status.h"

namespace squaredig::app {

ExitStatus check(const Command& command);

}  // namespace squaredig::app
