// The units a LandXML document states, in any order and place of the document.
//
// Errors: two statements that differ, and names that are no unit, go to the list of faults;
// spellings
//   beside the schema's (metre, Meter, feet) are taken and told.
// Source: LandXML 1.2, elements Units, Metric and Imperial; 1 ft = 0.3048 m, 1 US survey foot =
//   1200/3937 m, 1 inch = 0.0254 m, 1 mile = 5280 ft.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "formats/fault_list.h"
#include "formats/xml_events.h"

namespace squaredig::formats {

struct LandXmlUnits {
  std::optional<std::string> linear;    // as stated
  std::optional<double> metres;         // of one linear unit
  std::optional<double> square_metres;  // of one area unit
  Place place;

  // From an element Metric or Imperial.
  void take(const XmlElement& element, FaultList& faults, std::vector<std::string>& cautions);
};

}  // namespace squaredig::formats
