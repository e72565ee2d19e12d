#include "app/program.h"

#include <csignal>

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

}  // namespace

int run_program(const std::vector<std::string>& arguments) {
  // A limit on file sizes is a full disk to us: it is told, and ends with exit status 3.
  static_cast<void>(std::signal(SIGXFSZ, SIG_IGN));
  ExitStatus status = ExitStatus::Done;
  const auto problems = problems_of([&] { status = run(arguments); });
  if (!problems.empty()) status = status_of(problems);
  for (const auto& problem : problems) Messages::report(problem);
  return static_cast<int>(status);
}

}  // namespace squaredig::app
