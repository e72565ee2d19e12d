#include "app/refusals.h"

#include <algorithm>

namespace squaredig::app {

ExitStatus status_of(const std::vector<Problem>& problems) {
  const bool wrong_input = std::any_of(problems.begin(), problems.end(), [](const Problem& p) {
    return p.kind == ProblemKind::Input;
  });
  return wrong_input ? ExitStatus::WrongInput : ExitStatus::Storage;
}

std::vector<Problem> problems_of(const std::function<void()>& work) {
  try {
    work();
  } catch (const Refusal& refusal) {
    return refusal.problems();
  }
  return {};
}

void Refusals::gather(const std::function<void()>& work) { add(problems_of(work)); }

void Refusals::add(const std::vector<Problem>& problems) {
  for (const auto& problem : problems) {
    const bool known = std::any_of(problems_.begin(), problems_.end(),
                                   [&](const Problem& p) { return p.text() == problem.text(); });
    if (!known) problems_.push_back(problem);
  }
}

void Refusals::throw_if_any() const {
  if (!problems_.empty()) throw Refusal(problems_);
}

}  // namespace squaredig::app
