#include "app/program.h"

#include <csignal>
#include <exception>

#include "app/commands.h"
#include "app/messages.h"
#include "app/refusals.h"

namespace squaredig::app {
namespace {

ExitStatus run(const std::vector<std::string>& arguments) {
  const auto parsed = parse_command_line(arguments);
  if (const auto* printed = std::get_if<Printed>(&parsed)) {
    Messages::print(printed->text);
    return ExitStatus::Done;
  }
  return run_command(std::get<Command>(parsed));
}

// A refusal ends a run in words; whatever else is thrown is a fault of the program, said as such.
ExitStatus guarded(const std::vector<std::string>& arguments) try {
  ExitStatus status = ExitStatus::Done;
  const auto problems = problems_of([&] { status = run(arguments); });
  for (const auto& problem : problems) Messages::report(problem);
  return problems.empty() ? status : status_of(problems);
} catch (const std::exception& fault) {
  Messages::complain(std::string("squaredig: a fault of the program: ") + fault.what() +
                     "; nothing half-written is left; please report it with the job");
  return ExitStatus::FaultInProgram;
}

}  // namespace

int run_program(const std::vector<std::string>& arguments) {
  // A limit on file sizes is a full disk to us: it is told, and ends with exit status 3.
  static_cast<void>(std::signal(SIGXFSZ, SIG_IGN));
  return static_cast<int>(guarded(arguments));
}

}  // namespace squaredig::app
