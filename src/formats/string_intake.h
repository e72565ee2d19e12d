// What reading strings has in common over all formats but CSV: the place on the job's grid,
// heights, names, and the record of what was read.
//
// Laws: string_intake.1  strings that share a name are numbered, so that a finding can name one.
// Errors: a string of a single vertex, a vertex without a height that is wanted, and a coordinate
//   that is not finite are faults.
// Source: the house's own.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "formats/stated_crs.h"
#include "formats/strings_csv.h"

namespace squaredig::formats {

class StringIntake {
 public:
  StringIntake(const SourceFile& source, Heights heights);

  // How the file's numbers become the job's coordinates: before the first vertex.
  void place_by(const StatedCrs& stated);
  void begin(std::string name);
  void vertex(double east, double north, std::optional<double> up, const Place& at);
  // `closed`: back to the first vertex, unless the last is there already.
  void end(bool closed, const Place& at);

  bool empty() const { return file_.strings.empty(); }
  FaultList& faults() { return faults_; }
  std::vector<std::string>& cautions() { return file_.cautions; }
  std::vector<std::string>& assumed() { return file_.assumed; }
  // Throws all faults there are, or gives what was read.
  StringsFile finish(std::string sha256);

 private:
  void number_names();

  SourceFile source_;
  Heights heights_;
  StringsFile file_;
  Placing placing_;
  FaultList faults_;
};

}  // namespace squaredig::formats
