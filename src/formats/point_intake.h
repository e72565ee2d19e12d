// What reading points has in common over all formats but CSV: the codes that are asked for, the
// place on the job's grid, the window, and the record of what was read.
//
// Laws: point_intake.1  `read` and `used` count points of the whole file whatever `keep` lets
// through.
// Accuracy: memory is that of the points kept.
// Errors: names twice or blank are refused or told as a caution, as wanted; a height that is
// wanted and missing is a fault.
// Source: the house's own.
#pragma once

#include <string>
#include <string_view>

#include "formats/fault_list.h"
#include "formats/points_csv.h"
#include "formats/stated_crs.h"

namespace squaredig::formats {

// One point as a file holds it. Views live until take() returns.
struct PointRead {
  double east = 0;
  double north = 0;
  std::optional<double> up = std::nullopt;
  std::string_view label = {};
  std::string_view code = {};
  Place place = {};  // line and column alone are used
};

class PointIntake {
 public:
  PointIntake(const SourceFile& source, PointsWanted wanted, PointTable before);

  // How the file's numbers become the job's coordinates: before the first point.
  void place_by(const StatedCrs& stated);
  bool wants_code(std::string_view code) const;
  // A point of a code that is asked for.
  void take(const PointRead& raw);
  // A point that takes no part.
  void set_aside(int line, std::string_view why);
  void set_aside_code(int line, std::string_view code);

  const std::string& file() const { return source_.name; }
  FaultList& faults() { return faults_; }
  std::vector<std::string>& cautions() { return file_.cautions; }
  std::vector<std::string>& assumed() { return file_.assumed; }
  // Throws all faults there are, or gives what was read.
  PointsFile finish(std::string sha256);

 private:
  SourceFile source_;
  PointsWanted wanted_;
  PointsFile file_;
  Placing placing_;
  FaultList faults_;
  std::size_t first_ = 0;
  std::uint16_t number_ = 0;
  std::size_t aside_ = 0;
  bool any_label_ = false;
  bool all_heights_zero_ = true;
};

}  // namespace squaredig::formats
