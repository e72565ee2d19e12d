// Operation: the way from one reference system to another, chosen by stated accuracy, offline,
// never a ballpark, with every file it needs at hand; it tells its own name and accuracy.
//
// Frame and units: a Position holds eastward and northward before height: metres for projected
//   systems, degrees (longitude, latitude) for geographic ones, whatever order the systems declare
//   and whatever unit of length the first of them counts in.
// Requires: authority codes; a place near the work, which decides between regional operations.
// Laws: operation.1 the operation that is named is the one that runs; operation.2 what comes out is
//   finite; operation.3 the network is never asked, whatever the environment says; operation.4 a
//   way that depends on the date of the positions is taken for a stated date alone.
// Accuracy: as the register states it for the operation, in `accuracy`; zero for a pure map
//   projection of one datum.
// Errors: Refusal where only a ballpark is known, where the best operation needs a grid file that
//   is not installed (named), where no accuracy is stated, where it depends on the date of the
//   positions and none is given, where an axis is neither east, north nor up, and where a point
//   cannot be taken.
// Source: PROJ 9 library reference, operation factory contexts.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "geodesy/grid.h"

namespace squaredig::geodesy {

struct OperationUsed {
  std::string name;
  Length accuracy;
  std::vector<std::string> grid_files;  // full paths of the files it reads
  std::string software;                 // "PROJ 9.1.1, EPSG v10.076"
};

struct Position {
  double east = 0;
  double north = 0;
  double up = 0;
};

class Operation {
 public:
  // `year` is the date of the positions, such as 2018.0: plates drift by centimetres a year, and
  // between a world-wide and a plate's own system the way depends on it.
  static Operation best(std::string_view from, std::string_view to, Geographic near,
                        const Place& place, std::optional<double> year = std::nullopt);
  // The same for work that can do without: the problem instead of a Refusal where no operation is
  // of stated accuracy with every file at hand.
  static std::variant<Operation, Problem> search(std::string_view from, std::string_view to,
                                                 Geographic near, const Place& place,
                                                 std::optional<double> year = std::nullopt);
  Position apply(Position p) const;
  const OperationUsed& used() const;

 private:
  struct Impl;
  explicit Operation(std::shared_ptr<const Impl> impl) : impl_(std::move(impl)) {}
  std::shared_ptr<const Impl> impl_;
};

// From the grid to longitude and latitude of WGS 84, as RFC 7946 wants them.
class ToWgs84 {
 public:
  static std::variant<ToWgs84, Problem> search(const Grid& grid, GridPoint near,
                                               const Place& place);
  Geographic operator()(GridPoint p) const;
  const OperationUsed& used() const { return operation_.used(); }

 private:
  explicit ToWgs84(Operation operation) : operation_(std::move(operation)) {}
  Operation operation_;
};

}  // namespace squaredig::geodesy
