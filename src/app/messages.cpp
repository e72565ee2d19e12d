#include "app/messages.h"

#include <unistd.h>

#include <iostream>

namespace squaredig::app {

void Messages::tell(std::string_view text) const {
  if (speech_ == Speech::Normal) complain(text);
}

void Messages::report(const Problem& problem) { complain(problem.text()); }

void Messages::complain(std::string_view text) { std::cerr << text << std::endl; }

void Messages::print(std::string_view text) {
  std::cout << text << std::flush;
  if (!std::cout)
    throw Refusal(Problem{ProblemKind::Storage,
                          {"standard output", 1, 1},
                          "it cannot be written",
                          "a stream that takes the result",
                          "check where it is sent; files already written are whole"});
}

void Messages::progress_line(std::string_view text) {
  std::cerr << "\r\x1B[K" << text << std::flush;
}

bool Messages::error_is_terminal() { return ::isatty(STDERR_FILENO) == 1; }

}  // namespace squaredig::app
