// The parts of set_out, each in a file of its own; the work they share.
#pragma once

#include "design/laser.h"
#include "pegs/set_out.h"

namespace squaredig::pegs {

// Everything that is known before the first peg is placed.
struct Work {
  const PegsInput& input;
  const design::DesignInput& design;
  const design::Excavation& pit;
  const OnGrid& on;
  std::optional<design::Laser> laser;

  const design::Tank& tank() const { return pit.tank; }
  // A length of the job file on the grid.
  Length on_grid(Length stated) const { return stated * design.combined_factor.value(); }
};

// --- names and strings -------------------------------------------------------------------------
// Peg 1 of a corner stands on its leading side, produced back; peg 2 on the side that ends there.
enum class Which { First, Second };
struct PegSpot {
  std::size_t corner = 0;
  Which which = Which::First;
};
std::string peg_name(PegSpot spot);
std::size_t side_of(const design::Tank& tank, PegSpot spot);
// The direction from the corner to the peg.
Bearing outward(const design::Tank& tank, PegSpot spot);
std::string string_name(const design::Tank& tank, std::size_t side);
std::vector<PegSpot> all_spots(const design::Tank& tank);
// Interior angle of a corner, in (0, 360).
Angle interior_angle(const std::vector<GridPoint>& clockwise, std::size_t corner);

// --- scale.cpp -----------------------------------------------------------------------------------
void refuse_swapped(const Work& work);
ScaleHere scale_here(const Work& work, ResultHead& head);
void add_geographic(const Work& work, PegsResult& result);
NamedLength named_length(std::string name, Length grid, Ratio combined);
std::vector<NamedLength> sides_of(const std::vector<GridPoint>& corners, Ratio combined);
std::vector<NamedLength> diagonals_of(const std::vector<GridPoint>& corners, Ratio combined);

// --- influence.cpp -------------------------------------------------------------------------------
// The pit as the influence line would dig it; nothing where every batter is as flat already, or
// where it leaves the survey (a finding).
std::optional<design::Excavation> influence_pit(const Work& work, ground::Survey& survey,
                                                std::vector<Finding>& findings);

// --- place_pegs.cpp ------------------------------------------------------------------------------
std::vector<ReferencePeg> place_pegs(const Work& work, ground::Survey& survey, ResultHead& head);

// --- keep_out.cpp --------------------------------------------------------------------------------
// The keep-out string that the line from the corner to the peg meets first.
std::optional<std::string> crossed_string(const Work& work, GridPoint corner, GridPoint peg);

// --- corners.cpp ---------------------------------------------------------------------------------
std::vector<Corner> corners_of(const Work& work, const std::vector<ReferencePeg>& pegs,
                               Ratio combined);

// --- fittings.cpp --------------------------------------------------------------------------------
std::vector<PipePoint> pipe_points(const Work& work, const std::vector<ReferencePeg>& pegs,
                                   std::vector<Finding>& findings);
std::vector<ShaftPoint> shaft_points(const Work& work, const std::vector<ReferencePeg>& pegs,
                                     std::vector<Finding>& findings);

// --- polar.cpp -----------------------------------------------------------------------------------
void add_schedules(const Work& work, PegsResult& result);

// --- as_set.cpp ----------------------------------------------------------------------------------
AsSetResult check_as_set(const Work& work, const PegsResult& design, ResultHead& head);

// --- tape.cpp ------------------------------------------------------------------------------------
TapeResult check_tape(const Work& work, const PegsResult& design, ResultHead& head);

// --- words ---------------------------------------------------------------------------------------
std::string metres_text(Length l);       // "3.000 m"
std::string millimetres_text(Length l);  // "12.5 mm"
std::string at_text(GridPoint p);        // "E 715830.250 N 734697.600"

const ReferencePeg* find_peg(const std::vector<ReferencePeg>& pegs, std::string_view name);

}  // namespace squaredig::pegs
