#include "geodesy/operation.h"

#include <cmath>

#include "geodesy/proj_internal.h"

namespace squaredig::geodesy {

struct Operation::Impl {
  Owned<PJ_CONTEXT> context;
  Owned<PJ> operation;
  Axes from;
  Axes to;
  Place place;
  OperationUsed used;
  double year = HUGE_VAL;  // the library's word for none
};

namespace {

// The stated accuracy in metres: zero for a map projection alone, below zero where none is stated.
double stated_accuracy(PJ_CONTEXT* context, const PJ* operation) {
  if (proj_get_type(operation) == PJ_TYPE_CONVERSION) return 0;
  return proj_coordoperation_get_accuracy(context, operation);
}

Owned<PJ_OBJ_LIST> candidates(PJ_CONTEXT* context, const PJ* from, const PJ* to, Geographic near) {
  constexpr double kAround = 0.01;  // degrees
  const Owned<PJ_OPERATION_FACTORY_CONTEXT> factory(
      proj_create_operation_factory_context(context, nullptr));
  const double x = near.longitude.in_degrees();
  const double y = near.latitude.in_degrees();
  proj_operation_factory_context_set_area_of_interest(context, factory.get(), x - kAround,
                                                      y - kAround, x + kAround, y + kAround);
  proj_operation_factory_context_set_spatial_criterion(context, factory.get(),
                                                       PROJ_SPATIAL_CRITERION_PARTIAL_INTERSECTION);
  proj_operation_factory_context_set_grid_availability_use(context, factory.get(),
                                                           PROJ_GRID_AVAILABILITY_USED_FOR_SORTING);
  proj_operation_factory_context_set_allow_ballpark_transformations(context, factory.get(), 0);
  return Owned<PJ_OBJ_LIST>(proj_create_operations(context, from, to, factory.get()));
}

// The candidate of best stated accuracy; the first of equals.
Owned<PJ> most_accurate(PJ_CONTEXT* context, const PJ_OBJ_LIST* list) {
  Owned<PJ> best;
  double best_accuracy = 0;
  const int count = list != nullptr ? proj_list_get_count(list) : 0;
  for (int i = 0; i < count; ++i) {
    Owned<PJ> candidate(proj_list_get(context, list, i));
    if (!candidate ||
        proj_coordoperation_has_ballpark_transformation(context, candidate.get()) != 0)
      continue;
    const double accuracy = stated_accuracy(context, candidate.get());
    if (accuracy < 0 || (best && accuracy >= best_accuracy)) continue;
    best_accuracy = accuracy;
    best = std::move(candidate);
  }
  return best;
}

struct GridFiles {
  std::vector<std::string> present;
  std::string missing;  // names, comma separated
};

GridFiles grid_files(PJ_CONTEXT* context, const PJ* operation) {
  GridFiles files;
  const int count = proj_coordoperation_get_grid_used_count(context, operation);
  for (int i = 0; i < count; ++i) {
    const char* short_name = nullptr;
    const char* full_name = nullptr;
    int available = 0;
    proj_coordoperation_get_grid_used(context, operation, i, &short_name, &full_name, nullptr,
                                      nullptr, nullptr, nullptr, &available);
    if (available != 0)
      files.present.push_back(text_of(full_name));
    else
      files.missing += (files.missing.empty() ? "" : ", ") + text_of(short_name);
  }
  return files;
}

// Without a date the library takes such an operation at its reference epoch, and says nothing.
bool depends_on_date(PJ_CONTEXT* context, const PJ* operation) {
  const std::string steps = text_of(proj_as_proj_string(context, operation, PJ_PROJ_5, nullptr));
  for (const char* mark : {"+t_epoch=", "+proj=deformation", "+proj=defmodel"})
    if (steps.find(mark) != std::string::npos) return true;
  return false;
}

}  // namespace

std::variant<Operation, Problem> Operation::search(std::string_view from, std::string_view to,
                                                   Geographic near, const Place& place,
                                                   std::optional<double> year) {
  auto impl = std::make_shared<Impl>();
  impl->context = offline_context(place);
  impl->place = place;
  PJ_CONTEXT* context = impl->context.get();
  const Owned<PJ> source = crs_from_code(context, from, place);
  const Owned<PJ> target = crs_from_code(context, to, place);
  impl->from = axes_of(context, source.get(), place, AxisUnits::AnyLength);
  impl->to = axes_of(context, target.get(), place, AxisUnits::MetresAlone);
  const Owned<PJ_OBJ_LIST> list = candidates(context, source.get(), target.get(), near);
  Owned<PJ> found = most_accurate(context, list.get());
  const std::string way = "from " + std::string(from) + " to " + std::string(to);
  if (!found)
    return Problem{ProblemKind::Input, place,
                   "no way " + way + " of stated accuracy is known here, only a ballpark or none",
                   "a transformation that states its accuracy",
                   "use reference systems of one datum"};
  const GridFiles files = grid_files(context, found.get());
  const std::string name = text_of(proj_get_name(found.get()));
  if (!files.missing.empty() || proj_coordoperation_is_instantiable(context, found.get()) == 0)
    return Problem{ProblemKind::Input, place,
                   "the way " + way + " (" + name + ") needs the grid file " + files.missing +
                       ", which is not installed",
                   "every grid file of the operation, on this machine",
                   "install it where PROJ looks for its data, or work in one datum"};
  if (!year && depends_on_date(context, found.get()))
    return Problem{ProblemKind::Input, place,
                   "the way " + way + " depends on the date of the positions",
                   "the year in which they were measured, such as 2018.5",
                   "state it (of GNSS: gnss_year), or give positions in the grid's own datum"};
  impl->year = year.value_or(HUGE_VAL);
  impl->used = {name, Length::metres(stated_accuracy(context, found.get())), files.present,
                software_text(context)};
  impl->operation = std::move(found);
  return Operation(std::move(impl));
}

Operation Operation::best(std::string_view from, std::string_view to, Geographic near,
                          const Place& place, std::optional<double> year) {
  auto found = search(from, to, near, place, year);
  if (auto* problem = std::get_if<Problem>(&found)) throw Refusal(std::move(*problem));
  return std::get<Operation>(std::move(found));
}

Position Operation::apply(Position p) const {
  // positions come in metres whatever the system counts in
  const double unit = impl_->from.metres;
  const std::array<double, 3> in{p.east / unit, p.north / unit, p.up};
  std::array<double, 3> ordered{};
  for (std::size_t i = 0; i < 3; ++i) {
    const int slot = impl_->from.position[i];
    if (slot >= 0) ordered[static_cast<std::size_t>(slot)] = in[i];
  }
  PJ* operation = impl_->operation.get();
  proj_errno_reset(operation);
  const PJ_COORD out =
      proj_trans(operation, PJ_FWD, proj_coord(ordered[0], ordered[1], ordered[2], impl_->year));
  if (proj_errno(operation) != 0 || !std::isfinite(out.v[0]) || !std::isfinite(out.v[1]) ||
      !std::isfinite(out.v[2]))
    refuse(impl_->place, "a point that " + quoted(impl_->used.name) + " cannot take",
           "a point inside the operation's area and grid files",
           "check the reference systems and the coordinates");
  std::array<double, 3> result{p.east, p.north, p.up};
  for (std::size_t i = 0; i < 3; ++i) {
    const int slot = impl_->to.position[i];
    if (slot >= 0) result[i] = out.v[slot];
  }
  return {result[0], result[1], result[2]};
}

const OperationUsed& Operation::used() const { return impl_->used; }

std::variant<ToWgs84, Problem> ToWgs84::search(const Grid& grid, GridPoint near,
                                               const Place& place) {
  auto found = Operation::search(grid.code(), "EPSG:4326", grid.to_geographic(near), place);
  if (auto* problem = std::get_if<Problem>(&found)) return std::move(*problem);
  return ToWgs84(std::get<Operation>(std::move(found)));
}

Geographic ToWgs84::operator()(GridPoint p) const {
  const Position out = operation_.apply({p.easting.in_metres(), p.northing.in_metres(), 0});
  return {Angle::degrees(out.north), Angle::degrees(out.east)};
}

}  // namespace squaredig::geodesy
