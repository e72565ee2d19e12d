#include "formats/landxml_units.h"

#include <array>

namespace squaredig::formats {
namespace {

struct Unit {
  std::string_view name;
  double size;
};
constexpr double kFoot = 0.3048;
constexpr double kSurveyFoot = 1200.0 / 3937.0;

constexpr std::array<Unit, 8> kLinear = {{{"meter", 1},
                                          {"millimeter", 0.001},
                                          {"centimeter", 0.01},
                                          {"kilometer", 1000},
                                          {"foot", kFoot},
                                          {"USSurveyFoot", kSurveyFoot},
                                          {"inch", 0.0254},
                                          {"mile", 5280 * kFoot}}};
// spellings that are met beside the schema's
constexpr std::array<std::array<std::string_view, 2>, 6> kSpellings = {{{"metre", "meter"},
                                                                        {"metres", "meter"},
                                                                        {"meters", "meter"},
                                                                        {"m", "meter"},
                                                                        {"feet", "foot"},
                                                                        {"ft", "foot"}}};
constexpr std::array<Unit, 8> kArea = {{{"squareMeter", 1},
                                        {"hectare", 10000},
                                        {"squareMillimeter", 1e-6},
                                        {"squareCentimeter", 1e-4},
                                        {"squareFoot", kFoot* kFoot},
                                        {"acre", 43560 * kFoot* kFoot},
                                        {"squareInch", 0.0254 * 0.0254},
                                        {"squareMiles", 5280 * kFoot * 5280 * kFoot}}};

std::string lower(std::string_view text) {
  std::string low(text);
  for (char& c : low)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return low;
}

template <std::size_t N>
const Unit* unit_of(const std::array<Unit, N>& units, std::string_view name) {
  const std::string low = lower(name);
  for (const Unit& unit : units)
    if (lower(unit.name) == low) return &unit;
  return nullptr;
}

const Unit* linear_unit(const std::string& name) {
  for (const auto& [met, meant] : kSpellings)
    if (met == lower(name)) return unit_of(kLinear, meant);
  return unit_of(kLinear, name);
}

}  // namespace

void LandXmlUnits::take(const XmlElement& element, FaultList& faults,
                        std::vector<std::string>& cautions) {
  const auto name = element.value("linearUnit");
  const Unit* unit = name ? linear_unit(*name) : nullptr;
  if (unit == nullptr) {
    faults.add(
        element.place,
        name ? "linearUnit " + quoted(*name) : "no linearUnit in " + std::string(element.name),
        "meter, foot, USSurveyFoot or another linear unit of LandXML 1.2",
        "correct the units of the file");
    return;
  }
  if (metres && *metres != unit->size)
    faults.add(element.place,
               "linearUnit " + quoted(*name) + " after " + quoted(*linear) + " in line " +
                   std::to_string(place.line),
               "one linear unit", "take out the wrong one");
  if (*name != unit->name)
    cautions.push_back(element.place.file + ": linearUnit " + quoted(*name) + " is taken as " +
                       std::string(unit->name));
  linear = *name;
  metres = unit->size;
  place = element.place;
  if (const auto area = element.value("areaUnit"))
    if (const Unit* square = unit_of(kArea, *area)) square_metres = square->size;
  if (const auto height = element.value("elevationUnit"); height && linear_unit(*height) != unit)
    cautions.push_back(element.place.file + ": elevationUnit " + quoted(*height) +
                       " is said of attributes alone: heights of points are in " +
                       std::string(unit->name));
}

}  // namespace squaredig::formats
