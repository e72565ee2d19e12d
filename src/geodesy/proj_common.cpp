#include <cmath>

#include "geodesy/proj_internal.h"

namespace squaredig::geodesy {
namespace {

void say_nothing(void*, int, const char*) {}

bool is_length(PJ_CONTEXT* context, const char* authority, const char* code) {
  const char* category = nullptr;
  return authority != nullptr && code != nullptr &&
         proj_uom_get_info_from_database(context, authority, code, nullptr, nullptr, &category) !=
             0 &&
         text_of(category) == "linear";
}

// One coordinate system's axes, appended to what is known already.
void read_axes(PJ_CONTEXT* context, const PJ* crs, const Place& place, Axes& axes, int first,
               AxisUnits units) {
  const Owned<PJ> system(proj_crs_get_coordinate_system(context, crs));
  const int count = system ? proj_cs_get_axis_count(context, system.get()) : 0;
  for (int i = 0; i < count; ++i) {
    const char* name = nullptr;
    const char* direction = nullptr;
    const char* unit = nullptr;
    const char* authority = nullptr;
    const char* code = nullptr;
    double factor = 0;
    proj_cs_get_axis_info(context, system.get(), i, &name, nullptr, &direction, &factor, &unit,
                          &authority, &code);
    const std::string way = text_of(direction);
    const int slot = way == "east" ? 0 : way == "north" ? 1 : way == "up" ? 2 : -1;
    if (slot < 0 || axes.position[static_cast<std::size_t>(slot)] >= 0)
      refuse(place,
             "axis " + quoted(text_of(name)) + " of " + quoted(text_of(proj_get_name(crs))) +
                 " points " + way,
             "one axis to the east and one to the north",
             "use a grid whose axes are east and north");
    const bool degrees = text_of(unit) == "degree";
    const bool taken = slot < 2 && units == AxisUnits::AnyLength &&
                       is_length(context, authority, code) &&
                       (axes.metres == 1 || axes.metres == factor);
    if (!degrees && factor != 1.0 && !taken)
      refuse(place, quoted(text_of(proj_get_name(crs))) + " counts in " + quoted(text_of(unit)),
             "a grid in metres", "use the metric grid of the region, and coordinates in it");
    if (slot < 2) axes.geographic = degrees;
    if (slot < 2 && !degrees) axes.metres = factor;
    axes.position[static_cast<std::size_t>(slot)] = first + i;
  }
}

}  // namespace

Owned<PJ_CONTEXT> offline_context(const Place& place) {
  Owned<PJ_CONTEXT> context(proj_context_create());
  proj_log_func(context.get(), nullptr, say_nothing);
  proj_context_set_enable_network(context.get(), 0);
  if (proj_context_is_network_enabled(context.get()) != 0)
    refuse(place, "the coordinate library insists on the network",
           "coordinate work that depends on nothing outside this machine",
           "unset PROJ_NETWORK and try again");
  if (proj_context_get_database_metadata(context.get(), "EPSG.VERSION") == nullptr)
    throw Refusal(Problem{ProblemKind::Storage, place, "the register proj.db cannot be read",
                          "the package proj-data", "install it, or unset PROJ_DATA and PROJ_LIB"});
  return context;
}

Owned<PJ> crs_from_code(PJ_CONTEXT* context, std::string_view code, const Place& place) {
  const auto colon = code.find(':');
  const bool shaped = colon != std::string_view::npos && colon > 0 && colon + 1 < code.size() &&
                      code.find_first_of(" \t@,+=/\\", 0) == std::string_view::npos;
  if (!shaped)
    refuse(place, "coordinate reference system " + quoted(code),
           "an authority and a code, such as \"EPSG:2157\"", "write the code of the job's grid");
  const std::string authority(code.substr(0, colon));
  const std::string number(code.substr(colon + 1));
  Owned<PJ> crs(proj_create_from_database(context, authority.c_str(), number.c_str(),
                                          PJ_CATEGORY_CRS, 0, nullptr));
  if (!crs)
    refuse(place, "coordinate reference system " + quoted(code) + " is not in the register",
           "a code known to " + software_text(context), "correct the code");
  return crs;
}

std::string software_text(PJ_CONTEXT* context) {
  return "PROJ " + text_of(proj_info().version) + ", EPSG " +
         text_of(proj_context_get_database_metadata(context, "EPSG.VERSION"));
}

Axes axes_of(PJ_CONTEXT* context, const PJ* crs, const Place& place, AxisUnits units) {
  Axes axes;
  if (proj_get_type(crs) != PJ_TYPE_COMPOUND_CRS) {
    read_axes(context, crs, place, axes, 0, units);
  } else {
    const Owned<PJ> horizontal(proj_crs_get_sub_crs(context, crs, 0));
    const Owned<PJ> vertical(proj_crs_get_sub_crs(context, crs, 1));
    read_axes(context, horizontal.get(), place, axes, 0, units);
    read_axes(context, vertical.get(), place, axes, 2, units);
  }
  if (axes.position[0] < 0 || axes.position[1] < 0)
    refuse(place, quoted(text_of(proj_get_name(crs))) + " has no axes east and north",
           "a system with eastward and northward coordinates", "name the job's grid");
  return axes;
}

}  // namespace squaredig::geodesy
