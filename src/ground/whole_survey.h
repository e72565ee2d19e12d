// The whole survey triangulated once, and given for any region.
//
// Frame and units: the frame it was built in.
// Requires: what build_ground requires.
// Laws: whole.1 every region gets the one surface.
// Accuracy: as build_ground.
// Errors: as build_ground, when it is made.
// Source: definition.
#pragma once

#include "ground/build_ground.h"

namespace squaredig::ground {

class WholeSurvey final : public Survey {
 public:
  WholeSurvey(const GroundInput& input, const geometry::SiteFrame& frame)
      : built_(build_ground(input, frame)) {}
  const geometry::SiteFrame& frame() const override { return built_.ground.frame; }
  const GroundSurface& surface_for(const Region&) override { return built_.ground; }
  const BuiltGround& built() const { return built_; }
  // The surface, given away: the last that is asked of the survey.
  GroundSurface&& ground() && { return std::move(built_.ground); }

 private:
  BuiltGround built_;
};

}  // namespace squaredig::ground
