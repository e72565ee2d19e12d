// The zone within which loads bear on the pit: the influence line, drawn from the toe upward at a
// given batter, up to where it meets the ground.
//
// What: the pit as it would be with every batter at least that flat. Where a side's own batter is
// as
//   flat already its crest stands for the line.
// Frame and units: those of the excavation.
// Requires: the excavation and the survey it was made from.
// Laws: influence.1  no point of the line lies inside the batters' crest; influence.2  where every
//   batter is as flat as the line there is no zone.
// Accuracy: as the excavation.
// Errors: none: a line that runs out of the survey is told with its place.
// Source: lines of influence up from the toe are common practice, no source; the batter is the
// job's.
#pragma once

#include "design/excavation.h"

namespace squaredig::design {

// Which toes the line is drawn from: the floor's alone, or those of trenches and sumps too.
enum class InfluenceFrom { Floor, EveryToe };

struct InfluenceZone {
  std::optional<Excavation> zone;
  std::optional<GridPoint> off_survey;  // where the line runs out of the survey; then no zone
};

InfluenceZone influence_zone(const DesignInput& input, const Excavation& pit, Batter influence,
                             InfluenceFrom from, ground::Survey& survey);

}  // namespace squaredig::design
