// What is looked for in the ground, one function for each.
#pragma once

#include "ground/examine.h"
#include "ground/rows_internal.h"

namespace squaredig::ground {

// Findings of one kind: told singly up to a number, then counted.
class FindingList {
 public:
  FindingList(std::string code, std::vector<Finding>& out) : code_(std::move(code)), out_(out) {}
  ~FindingList();
  FindingList(const FindingList&) = delete;
  FindingList& operator=(const FindingList&) = delete;
  // False once there are enough: the text need not be made then.
  bool wants_text();
  void add(std::string text);

 private:
  std::string code_;
  std::vector<Finding>& out_;
  std::size_t count_ = 0;
};

void find_doubled(const Rows& rows, const BuiltGround& built, std::vector<Finding>& findings);
void find_near(const Rows& rows, const BuiltGround& built, std::vector<Finding>& findings);
std::vector<Suspect> find_spikes(const Rows& rows, const GroundInput& input,
                                 const BuiltGround& built, std::vector<Finding>& findings);
std::vector<Crossing> find_crossings(const Rows& rows, const BuiltGround& built,
                                     std::vector<Finding>& findings);
std::vector<InputRecord> rows_used(const Rows& rows, const GroundInput& input,
                                   const BuiltGround& built);

}  // namespace squaredig::ground
