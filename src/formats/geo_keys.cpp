#include "formats/geo_keys.h"

#include <map>

#include "formats/little_endian.h"

namespace squaredig::formats {
namespace {

enum Key : unsigned {
  kModelType = 1024,
  kGeographic = 2048,
  kProjected = 3072,
  kPlanUnit = 3076,
  kVertical = 4096,
  kHeightUnit = 4099
};
constexpr unsigned kUserDefined = 32767;
constexpr unsigned kModelGeographic = 2;
constexpr unsigned kModelGeocentric = 3;

std::map<unsigned, unsigned> keys_of(std::string_view bytes, const Place& place,
                                     FaultList& faults) {
  std::map<unsigned, unsigned> keys;
  const std::size_t entries = bytes.size() / 8;
  const std::size_t stated = entries == 0 ? 0 : little_u16(bytes, 6);
  if (entries == 0 || stated > entries - 1) {
    faults.add(place, "GeoTIFF keys that are cut off", "as many keys as their directory counts",
               "export the file again");
    return keys;
  }
  for (std::size_t i = 1; i <= stated; ++i) {
    const unsigned held_elsewhere = little_u16(bytes, 8 * i + 2);
    const unsigned value = little_u16(bytes, 8 * i + 6);
    if (held_elsewhere == 0 && value != 0 && value != kUserDefined)
      keys[little_u16(bytes, 8 * i)] = value;
  }
  return keys;
}

std::optional<double> unit_of(const std::map<unsigned, unsigned>& keys, unsigned key,
                              const Place& place, FaultList& faults) {
  const auto found = keys.find(key);
  if (found == keys.end()) return std::nullopt;
  switch (found->second) {
    case 9001:
      return metres_per(LengthUnit::Metre);
    case 9002:
      return metres_per(LengthUnit::Foot);
    case 9003:
      return metres_per(LengthUnit::UsSurveyFoot);
    default:
      faults.add(place, "the unit of code " + std::to_string(found->second),
                 "9001 metre, 9002 foot or 9003 US survey foot", "export the file in metres");
      return std::nullopt;
  }
}

}  // namespace

StatedCrs crs_of_geo_keys(std::string_view directory, const Place& place, FaultList& faults) {
  const auto keys = keys_of(directory, place, faults);
  const auto value = [&](unsigned key) {
    const auto found = keys.find(key);
    return found == keys.end() ? 0U : found->second;
  };
  StatedCrs stated;
  stated.place = place;
  const unsigned model = value(kModelType);
  if (model == kModelGeocentric)
    faults.add(place, "geocentric coordinates", "easting, northing and height",
               "export the file in the job's coordinate system");
  stated.degrees = model == kModelGeographic;
  const unsigned code = value(stated.degrees ? kGeographic : kProjected);
  if (code != 0) {
    const StatedCrs of_code = crs_of_code(static_cast<int>(code), place, faults);
    stated.words = of_code.words;
    stated.plan = of_code.plan;
    stated.degrees = of_code.degrees;
  } else if (stated.degrees) {
    stated.words = "a geographic system without a code";
  }
  stated.metres = unit_of(keys, kPlanUnit, place, faults);
  stated.metres_up = unit_of(keys, kHeightUnit, place, faults);
  if (const unsigned vertical = value(kVertical)) stated.heights = static_cast<int>(vertical);
  return stated;
}

}  // namespace squaredig::formats
