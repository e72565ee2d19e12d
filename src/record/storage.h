// Stage against storage: how much the tank holds below each level.
//
// What: the tank between its underside and top, both falling alike, below a level plane; times the
//   void ratio where the job gives one. Nothing else stores: voids of the surround are never added.
// Frame and units: site frame; cubic metres.
// Requires: a tank with height above zero.
// Laws: storage.1  it never falls as the level rises, is zero at the lowest point of the underside
//   and the whole at the highest of the top; storage.2  on a level base it is area times depth.
// Accuracy: exact integration over the footprint.
// Errors: none.
// Source: definition; only the water below the outlet counts as storage, common practice, no
// source.
#pragma once

#include "design/footprint.h"
#include "record/record_result.h"

namespace squaredig::record {

struct StorageInput {
  const design::Tank& tank;
  design::LevelPlane underside;  // as surveyed, else as designed
  std::string stands_on;
  std::optional<Ratio> voids;
  std::optional<Elevation> outlet;
};

Storage storage_of(const StorageInput& input);

}  // namespace squaredig::record
