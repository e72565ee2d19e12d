#include "formats/fault_list.h"

namespace squaredig::formats {

void FaultList::add(Place place, std::string found, std::string needed, std::string remedy) {
  if (++count_ <= kFaultsListed)
    listed_.push_back({ProblemKind::Input, std::move(place), std::move(found), std::move(needed),
                       std::move(remedy)});
  else if (count_ == kFaultsListed + 1)
    first_unlisted_ = std::move(place);
}

void FaultList::throw_if_any() const {
  if (empty()) return;
  std::vector<Problem> problems = listed_;
  if (count_ > kFaultsListed) {
    const std::size_t more = count_ - kFaultsListed;
    problems.push_back({ProblemKind::Input, first_unlisted_,
                        std::to_string(more) + (more == 1 ? " more fault" : " more faults") +
                            " from here on, not listed",
                        "a file without faults", "correct those listed and run again"});
  }
  throw Refusal(std::move(problems));
}

}  // namespace squaredig::formats
