// Total station: set-ups on known and free stations to coordinates with covariances.
//
// What: faces reduced, distances corrected for prism and air, all set-ups that share unknown points
//   adjusted together in three dimensions, tested, and their sideshots computed.
// Frame and units: the job's grid.
// Laws: total_station.1 perfect readings give the true places; total_station.2 the answer does not
//   depend on the order of the lines beyond rounding; total_station.3 what is wrong beyond doubt is
//   left out and named; what cannot be told apart is named together and gives no coordinates.
// Accuracy: 1e-6 m of the model on perfect readings over 1 km; standard deviations as stated for
//   one pointing in one face. Centring and heights of instrument and target are taken as free of
//   error. The difference of arc and chord of the projection is left out: 0.02" over 300 m.
// Errors: Refusal for set-ups that their sights do not place, among them three directions on the
//   danger circle; for sigmas that are missing or zero; for a target that is its own station.
// Source: directions, zenith angles and slope distances by least squares; data snooping after
//   Baarda (from memory); the danger circle: teaching notes, quoted.
#pragma once

#include "field/field_input.h"
#include "field/field_result.h"
#include "field/work_scale.h"

namespace squaredig::field {

// A point the net may be hung on: control, levelled or GNSS. Sigmas of zero hold it fixed.
struct KnownPoint {
  std::string name;
  std::optional<GridPoint> at;
  std::optional<Elevation> height;
  Length sigma_plan;
  Length sigma_height;
};

struct StationsReduced {
  std::vector<ReducedPoint> points;
  std::vector<PointWithheld> withheld;
  std::vector<SetupResult> setups;
};

StationsReduced reduce_stations(const FieldInput& input, const std::vector<KnownPoint>& known,
                                const WorkScale& work, ResultHead& head);

}  // namespace squaredig::field
