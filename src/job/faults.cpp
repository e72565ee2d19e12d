#include "job/faults.h"

#include <algorithm>
#include <tuple>

namespace squaredig::job {

void Faults::add(const Place& place, std::string found, std::string needed, std::string remedy) {
  problems_.push_back(
      {ProblemKind::Input, place, std::move(found), std::move(needed), std::move(remedy)});
}

void Faults::wrong_value(const Node& node, std::string needed, std::string remedy) {
  add(node.place, node.path + " = " + node.described(), std::move(needed), std::move(remedy));
}

void Faults::refuse_if_any() {
  if (problems_.empty()) return;
  std::stable_sort(problems_.begin(), problems_.end(), [](const Problem& a, const Problem& b) {
    return std::tie(a.place.line, a.place.column) < std::tie(b.place.line, b.place.column);
  });
  throw Refusal(std::move(problems_));
}

std::string any_of(const std::vector<std::string>& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i)
    text += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + words[i];
  return text;
}

}  // namespace squaredig::job
