// A drawing as its entities: what stands in the section ENTITIES, one after the other.
//
// What: each entity's kind, layer, place in the file and the numbers its kind has; the vertices of
//   a POLYLINE with it. Entities in paper space and entities within block definitions are no part
//   of the drawing; entities of other kinds are counted.
// Frame and units: the drawing's own; its unit from $INSUNITS.
// Errors: faults go to the list: a file that ends without EOF, sections that are not closed, text
//   in an unknown code page, a group twice where it may stand once, numbers that are none.
// Source: DXF reference, sections HEADER and ENTITIES; values of $INSUNITS.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "formats/dxf_pairs.h"

namespace squaredig::formats {

struct DxfEntity {
  std::string kind;
  std::string layer;
  int line = 0;                          // of its kind
  std::map<int, double> number;          // by group code; of LWPOLYLINE the ones of the whole
  std::string text;                      // of TEXT
  std::vector<DxfEntity> vertices = {};  // of POLYLINE and LWPOLYLINE

  bool has(int code) const { return number.contains(code); }
  double value(int code, double otherwise) const {
    const auto found = number.find(code);
    return found == number.end() ? otherwise : found->second;
  }
  unsigned flags(int code) const;
};

struct DxfDrawing {
  std::optional<double> metres;  // of its unit, where it states metre, foot or US survey foot
  bool odd_unit = false;         // it states another
  std::string unit;              // how it states it: "$INSUNITS 2"
  Place unit_place;
  std::map<std::string, std::size_t> passed_over;  // kinds that are not looked at, paper space
  std::string sha256;
};

// Reads the whole file and gives `take` every entity of the kinds that are wanted, in order. Throws
// nothing itself; a file with faults may have given some entities before.
DxfDrawing read_dxf(const SourceFile& source, const std::vector<std::string>& kinds,
                    const std::function<void(DxfEntity&&)>& take, FaultList& faults);

}  // namespace squaredig::formats
