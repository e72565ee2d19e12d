// What the .cpp files of this room share: contexts that never go online and never print, and
// ownership of the library's objects.
#pragma once

#include <proj.h>

#include <array>
#include <memory>
#include <string>
#include <string_view>

#include "quantity/problem.h"

namespace squaredig::geodesy {

struct Destroy {
  void operator()(PJ* p) const { proj_destroy(p); }
  void operator()(PJ_CONTEXT* c) const { proj_context_destroy(c); }
  void operator()(PJ_OBJ_LIST* l) const { proj_list_destroy(l); }
  void operator()(PJ_OPERATION_FACTORY_CONTEXT* f) const {
    proj_operation_factory_context_destroy(f);
  }
};
template <class T>
using Owned = std::unique_ptr<T, Destroy>;

// A context of its own, offline and silent. Refusal (storage) where its register is not found.
Owned<PJ_CONTEXT> offline_context(const Place& place);
// The reference system of an authority's code. Refusal where text or code is not known.
Owned<PJ> crs_from_code(PJ_CONTEXT* context, std::string_view code, const Place& place);
// "PROJ 9.1.1, EPSG v10.076"
std::string software_text(PJ_CONTEXT* context);

// Where east, north and up stand among a system's coordinates; up is -1 for two dimensions.
struct Axes {
  std::array<int, 3> position{-1, -1, -1};
  bool geographic = false;
  double metres = 1;  // of one unit of east and north, where these are lengths
};
enum class AxisUnits { MetresAlone, AnyLength };
// Refusal where an axis points elsewhere or counts in other units than degrees or these lengths;
// heights count in metres.
Axes axes_of(PJ_CONTEXT* context, const PJ* crs, const Place& place, AxisUnits units);

inline std::string text_of(const char* text) { return text != nullptr ? text : ""; }

}  // namespace squaredig::geodesy
