#include "formats/stated_crs.h"

#include <cpl_error.h>
#include <ogr_spatialref.h>

#include <array>
#include <charconv>
#include <cmath>
#include <cstring>

#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr double kFoot = metres_per(LengthUnit::Foot);
constexpr double kSurveyFoot = metres_per(LengthUnit::UsSurveyFoot);

// GDAL says its complaints on standard error unless it is told not to.
class Hush {
 public:
  Hush() { CPLPushErrorHandler(CPLQuietErrorHandler); }
  ~Hush() { CPLPopErrorHandler(); }
  Hush(const Hush&) = delete;
  Hush& operator=(const Hush&) = delete;
};

std::string epsg_words(int code) { return "EPSG:" + std::to_string(code); }

std::optional<int> code_of(const OGRSpatialReference& system, const char* part) {
  const char* authority = system.GetAuthorityName(part);
  const char* code = system.GetAuthorityCode(part);
  if (authority == nullptr || code == nullptr || std::strcmp(authority, "EPSG") != 0)
    return std::nullopt;
  int number = 0;
  const char* const end = code + std::strlen(code);
  const bool whole = std::from_chars(code, end, number).ptr == end;
  return whole && number > 0 ? std::optional(number) : std::nullopt;
}

std::string name_of(const OGRSpatialReference& system) {
  const char* name = system.GetName();
  return name == nullptr ? "" : name;
}

// Units, degrees and codes of a system that GDAL knows.
StatedCrs described(const OGRSpatialReference& system, const Place& place) {
  StatedCrs stated;
  stated.place = place;
  stated.words = name_of(system);
  stated.degrees = system.IsGeographic() != 0;
  if (!stated.degrees && system.IsVertical() == 0)
    stated.metres = exact_unit(system.GetLinearUnits());
  stated.plan = code_of(system, stated.degrees ? "GEOGCS" : "PROJCS");
  if (stated.plan) stated.words = epsg_words(*stated.plan);
  if (system.IsVertical() != 0 || system.IsCompound() != 0) {
    stated.heights = code_of(system, "VERT_CS");
    stated.metres_up = exact_unit(system.GetTargetLinearUnits("VERT_CS"));
  }
  return stated;
}

// The size of a unit as the register has it for a code; nothing for degrees and unknown codes.
std::optional<double> registered_metres(int code) {
  const Hush hush;
  OGRSpatialReference system;
  if (system.importFromEPSG(code) != OGRERR_NONE || system.IsGeographic() != 0) return std::nullopt;
  return exact_unit(system.GetLinearUnits());
}

std::string words_of_unit(double metres, const std::string& of) {
  return unit_words(metres) + (of.empty() ? "" : " of " + of);
}

}  // namespace

double exact_unit(double metres) {
  for (const double known : {1.0, kFoot, kSurveyFoot})
    if (std::abs(metres / known - 1) < 1e-8) return known;
  return metres;
}

std::string unit_words(double metres) {
  if (metres == 1) return "m";
  if (metres == kFoot) return "ft";
  if (metres == kSurveyFoot) return "us-ft";
  return "units of " + shortest(metres) + " m";
}

StatedCrs crs_of_code(int code, const Place& place, FaultList& faults) {
  const Hush hush;
  OGRSpatialReference system;
  if (code > 0 && system.importFromEPSG(code) == OGRERR_NONE) return described(system, place);
  faults.add(place, "the coordinate system " + epsg_words(code), "a code that the register has",
             "correct it in the file, or export the file again");
  return {};
}

StatedCrs crs_of_wkt(const std::string& wkt, int wanted, const Place& place, FaultList& faults) {
  const Hush hush;
  OGRSpatialReference system;
  system.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  if (system.importFromWkt(wkt.c_str()) != OGRERR_NONE) {
    faults.add(place, "a coordinate system in WKT that cannot be read: " + quoted(wkt),
               "WKT as OGC 01-009 or ISO 19162 describe it", "export the file again");
    return {};
  }
  StatedCrs stated = described(system, place);
  OGRSpatialReference job;
  constexpr const char* kAsDrawn[] = {"IGNORE_DATA_AXIS_TO_SRS_AXIS_MAPPING=YES",
                                      "CRITERION=EQUIVALENT", nullptr};
  if (!stated.plan && wanted > 0 && job.importFromEPSG(wanted) == OGRERR_NONE &&
      system.IsSame(&job, kAsDrawn) != 0)
    stated.plan = wanted;
  return stated;
}

Placing::Placing(const StatedCrs& stated, const SourceFile& source, FaultList& faults,
                 std::vector<std::string>& assumed, std::vector<std::string>& cautions) {
  take_units(stated, source, faults, assumed);
  take_plan(stated, source, faults, assumed, cautions);
  if (!source.grid) return;
  const int wanted = source.grid->heights;
  if (stated.heights && wanted == 0)
    cautions.push_back(source.name + ": the file states the height system " +
                       epsg_words(*stated.heights) + "; in local heights it is taken as it stands");
  else if (stated.heights && *stated.heights != wanted)
    faults.add(stated.place, "heights in " + epsg_words(*stated.heights),
               epsg_words(wanted) + " as the job states",
               "convert the file, or correct heights in the job");
}

void Placing::take_units(const StatedCrs& stated, const SourceFile& source, FaultList& faults,
                         std::vector<std::string>& assumed) {
  const Place place = stated.unit_place.value_or(stated.place);
  const auto asked = source.unit ? std::optional(metres_per(*source.unit)) : std::nullopt;
  const auto by_code =
      stated.plan && !stated.degrees ? registered_metres(*stated.plan) : std::optional<double>();
  if (stated.metres && by_code && *stated.metres != *by_code)
    faults.add(place, "lengths in " + unit_words(*stated.metres),
               words_of_unit(*by_code, stated.words), "export the file again, in one unit");
  const auto said = stated.metres ? stated.metres : by_code;
  if (said && asked && *said != *asked)
    faults.add(place, "lengths in " + words_of_unit(*said, stated.words),
               unit_words(*asked) + " as the job states", "correct units in the job, or the file");
  if (stated.metres_up && asked && *stated.metres_up != *asked && stated.metres_up != said)
    faults.add(place, "heights in " + unit_words(*stated.metres_up),
               unit_words(*asked) + " as the job states", "correct units in the job, or the file");
  const double unit = said.value_or(asked.value_or(1));
  metres_ = stated.degrees ? 1 : unit;  // degrees are not scaled, their heights are
  metres_up_ = stated.metres_up.value_or(unit);
  if (!said && !asked && !stated.degrees)
    assumed.push_back(source.name + ": the file has no units; its lengths are taken in " +
                      unit_words(metres_));
  else if (!stated.metres_up && !asked && metres_up_ != 1)
    assumed.push_back(source.name +
                      ": the file does not state the unit of heights; they are taken "
                      "in " +
                      unit_words(metres_up_));
}

void Placing::take_plan(const StatedCrs& stated, const SourceFile& source, FaultList& faults,
                        std::vector<std::string>& assumed, std::vector<std::string>& cautions) {
  const int wanted = source.grid ? source.grid->epsg : 0;
  const std::string to = wanted > 0 ? epsg_words(wanted) : "metres on the job's grid";
  const bool same = stated.plan && *stated.plan == wanted;
  const bool way = stated.plan && wanted > 0 && source.grid->way_from;
  if (stated.degrees && !way) {
    faults.add(stated.place,
               "coordinates in degrees" + (stated.words.empty() ? "" : ", " + quoted(stated.words)),
               to, "export the file in the job's coordinate system");
  } else if (!source.grid || same) {
    return;
  } else if (wanted == 0) {
    if (!stated.words.empty())
      cautions.push_back(source.name + ": the file states the coordinate system " +
                         quoted(stated.words) + "; on a local grid it is taken as it stands");
  } else if (stated.words.empty()) {
    assumed.push_back(source.name + ": the file states no coordinate system; it is taken in " + to);
  } else if (way) {
    const CrsWay found = source.grid->way_from(*stated.plan, stated.place);
    move_ = found.move;
    assumed.push_back(source.name + ": " + found.words);
  } else {
    faults.add(stated.place, "coordinate system " + quoted(stated.words), to + " as the job states",
               "convert the file, or correct crs in the job");
  }
}

GridPosition Placing::at(double east, double north, double up) const {
  const GridPosition scaled = grid_position(east * metres_, north * metres_, up * metres_up_);
  if (!move_) return scaled;
  return {move_(scaled.at.easting.in_metres(), scaled.at.northing.in_metres()), scaled.height};
}

}  // namespace squaredig::formats
