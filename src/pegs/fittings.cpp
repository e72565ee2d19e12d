#include <algorithm>
#include <cmath>

#include "geometry/polygon.h"
#include "pegs/parts_internal.h"

namespace squaredig::pegs {
namespace {

std::size_t side_named(const Work& work, const std::string& name, const Place& place) {
  const design::Tank& tank = work.tank();
  for (std::size_t i = 0; i < tank.sides(); ++i)
    if (tank.side_name(i) == name) return i;
  refuse(place, "side = " + quoted(name),
         "the name of a side, such as " + quoted(tank.side_name(0)),
         "name the side the stub goes through");
}

// A point of a side's line told from the string: which peg, and how far along from it.
struct OnString {
  std::string peg;
  Length along;
};
OnString on_string(const Work& work, const std::vector<ReferencePeg>& pegs, std::size_t side,
                   Length from_first_corner) {
  const design::Tank& tank = work.tank();
  if (const auto* first = find_peg(pegs, peg_name({side, Which::First})))
    return {first->name, first->beyond_corner + from_first_corner};
  if (const auto* second = find_peg(pegs, peg_name({(side + 1) % tank.sides(), Which::Second})))
    return {second->name, second->beyond_corner + tank.side_length(side) - from_first_corner};
  return {};
}

void tell_leaving(const Work& work, const design::PipeStub& stub, const PipePoint& pipe,
                  std::size_t side, std::vector<Finding>& findings) {
  const std::string who = "Pipe " + quoted(pipe.name);
  const Length half = work.on_grid(stub.diameter) / 2;
  if (pipe.along < half || pipe.along + half > work.tank().side_length(side))
    findings.push_back(
        {"pipe-leaves-side", who + " does not pass wholly through side " + pipe.side +
                                 ", which is " + metres_text(work.tank().side_length(side)) +
                                 " long: its edges are at " + metres_text(pipe.along - half) +
                                 " and " + metres_text(pipe.along + half) + "."});
  if (const Length over = pipe.obvert - work.tank().top.at(pipe.at); over > Length{})
    findings.push_back(
        {"pipe-above-top", who + " rises " + millimetres_text(over) + " above the tank's top."});
  if (pipe.above_base < Length{})
    findings.push_back({"pipe-below-base", who + " lies " + millimetres_text(-pipe.above_base) +
                                               " below the tank's base."});
}

Length radius(const design::PipeStub& stub) { return stub.diameter / 2; }

void tell_meeting(const Work& work, const std::vector<PipePoint>& pipes,
                  std::vector<Finding>& findings) {
  const auto& stubs = work.design.tank.pipes;
  for (std::size_t i = 0; i < pipes.size(); ++i)
    for (std::size_t j = i + 1; j < pipes.size(); ++j) {
      if (pipes[i].side != pipes[j].side) continue;
      const Length across = pipes[j].along - pipes[i].along;
      const Length up = (pipes[j].invert + radius(stubs[j])) - (pipes[i].invert + radius(stubs[i]));
      const Length apart = Length::metres(std::hypot(across.in_metres(), up.in_metres())) -
                           radius(stubs[i]) - radius(stubs[j]);
      if (apart < Length{})
        findings.push_back({"pipes-meet", "Pipes " + quoted(pipes[i].name) + " and " +
                                              quoted(pipes[j].name) + " meet in side " +
                                              pipes[i].side + ": they overlap by " +
                                              millimetres_text(-apart) + "."});
    }
}

geometry::Polygon outline_of(const Work& work) {
  geometry::Polygon outline;
  for (const GridPoint& p : work.tank().corners) outline.push_back(work.pit.frame.to_site(p));
  std::reverse(outline.begin(), outline.end());
  return outline;
}

void tell_shaft(const Work& work, const design::AccessShaft& shaft, const ShaftPoint& point,
                std::vector<Finding>& findings) {
  const std::string who = "Shaft " + quoted(point.name);
  const auto outline = outline_of(work);
  const auto at = work.pit.frame.to_site(point.at);
  const double half = (work.on_grid(shaft.diameter) / 2).in_metres();
  if (geometry::side_of(outline, at, 0) < 0 ||
      geometry::distance_to_edge(outline, at) < half - 1e-9)
    findings.push_back({"shaft-leaves-tank", who + " does not stand wholly on the tank."});
  if (point.above_top < Length{})
    findings.push_back({"shaft-cover-low", who + ": its cover level lies " +
                                               millimetres_text(-point.above_top) +
                                               " below the tank's top."});
}

}  // namespace

std::vector<PipePoint> pipe_points(const Work& work, const std::vector<ReferencePeg>& pegs,
                                   std::vector<Finding>& findings) {
  std::vector<PipePoint> pipes;
  for (const design::PipeStub& stub : work.design.tank.pipes) {
    const std::size_t side = side_named(work, stub.side, stub.place);
    PipePoint pipe;
    pipe.name = stub.name;
    pipe.side = stub.side;
    pipe.along = work.on_grid(stub.along);
    pipe.at = ahead(work.tank().corners[side], work.tank().side_bearing(side), pipe.along);
    pipe.invert = stub.invert;
    pipe.obvert = stub.invert + stub.diameter;
    pipe.above_base = stub.invert - work.tank().underside.at(pipe.at);
    const OnString string = on_string(work, pegs, side, pipe.along);
    pipe.peg = string.peg;
    pipe.along_string = string.along;
    tell_leaving(work, stub, pipe, side, findings);
    pipes.push_back(std::move(pipe));
  }
  tell_meeting(work, pipes, findings);
  return pipes;
}

std::vector<ShaftPoint> shaft_points(const Work& work, const std::vector<ReferencePeg>& pegs,
                                     std::vector<Finding>& findings) {
  std::vector<ShaftPoint> shafts;
  for (const design::AccessShaft& shaft : work.design.tank.shafts) {
    ShaftPoint point;
    point.name = shaft.name;
    point.square_to_string = work.on_grid(shaft.in_from_ab);
    point.at = work.tank().from_a(work.on_grid(shaft.along_ab), point.square_to_string);
    point.cover_level = shaft.cover_level;
    point.above_top = shaft.cover_level - work.tank().top.at(point.at);
    const OnString string = on_string(work, pegs, 0, work.on_grid(shaft.along_ab));
    point.peg = string.peg;
    point.along_string = string.along;
    tell_shaft(work, shaft, point, findings);
    shafts.push_back(std::move(point));
  }
  return shafts;
}

}  // namespace squaredig::pegs
