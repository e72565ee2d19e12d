// What is looked for in the ground, one function for each.
#pragma once

#include "ground/examine.h"
#include "ground/rows_internal.h"

namespace squaredig::ground {

// Findings of one kind: told singly, with their places, up to a number, then counted.
class FindingList {
 public:
  FindingList(std::string code, GroundResult& out) : code_(std::move(code)), out_(out) {}
  ~FindingList();
  FindingList(const FindingList&) = delete;
  FindingList& operator=(const FindingList&) = delete;
  // False once there are enough: the text need not be made then.
  bool wants_text();
  void add(std::string text, GridPoint at);

 private:
  std::string code_;
  GroundResult& out_;
  std::size_t count_ = 0;
};

void find_doubled(const Rows& rows, const BuiltGround& built, GroundResult& result);
void find_near(const Rows& rows, const BuiltGround& built, GroundResult& result);
void find_spikes(const Rows& rows, const GroundInput& input, const BuiltGround& built,
                 GroundResult& result);
void find_crossings(const Rows& rows, const BuiltGround& built, GroundResult& result);
void add_contours(const BuiltGround& built, GroundResult& result);
std::vector<InputRecord> rows_used(const Rows& rows, const GroundInput& input,
                                   const BuiltGround& built);

}  // namespace squaredig::ground
