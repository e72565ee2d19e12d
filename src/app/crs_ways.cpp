#include "app/crs_ways.h"

#include "geodesy/operation.h"
#include "quantity/number_text.h"

namespace squaredig::app {
namespace {

std::string code_of(int epsg) { return "EPSG:" + std::to_string(epsg); }

// Where the work is: the tank's corner, else the middle of where the grid is used.
geodesy::Geographic near(const job::Job& job, const geodesy::Grid& grid) {
  const auto* corner = job.tank && job.tank->settings.corner_a
                           ? std::get_if<GridPoint>(&*job.tank->settings.corner_a)
                           : nullptr;
  if (corner != nullptr && grid.in_area(*corner) == geodesy::InArea::Inside)
    return grid.to_geographic(*corner);
  const auto area = grid.area_of_use();
  if (!area) return {};
  return {(area->south_west.latitude + area->north_east.latitude) * 0.5,
          (area->south_west.longitude + area->north_east.longitude) * 0.5};
}

formats::CrsWay way(int from, int to, geodesy::Geographic at, const Place& place) {
  const auto operation = geodesy::Operation::best(code_of(from), code_of(to), at, place);
  const auto& used = operation.used();
  if (used.accuracy > Length())
    refuse(place,
           "coordinates in " + code_of(from) + ", from which the best way to " + code_of(to) +
               ", " + quoted(used.name) + ", is good to " + shortest(used.accuracy.in_metres()) +
               " m only",
           "coordinates in " + code_of(to) + ", or a way that loses nothing",
           "export the file in the job's own coordinate system");
  return {[operation](double east, double north) {
            const auto p = operation.apply({east, north, 0});
            return grid_point(p.east, p.north);
          },
          "coordinates in " + code_of(from) + " are taken over to " + code_of(to) + " by " +
              quoted(used.name) + ", which loses nothing (" + used.software + ")"};
}

}  // namespace

std::function<formats::CrsWay(int, const Place&)> crs_ways(const job::Job& job) {
  if (!job.grid || !job.grid->crs) return {};
  const int to = *job.grid->crs;
  return [job, to](int from, const Place& place) {
    return way(from, to, near(job, geodesy::Grid::open(code_of(to), job.grid->place)), place);
  };
}

}  // namespace squaredig::app
