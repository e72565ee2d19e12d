#include "formats/pegs_csv.h"

#include "formats/csv_text.h"

namespace squaredig::formats {
namespace {

void peg_row(CsvText& csv, const pegs::ReferencePeg& p) {
  csv.label(p.name).place(p.at).metres(p.ground).word("PEG").word(p.corner).word(p.string_line);
  csv.metres(p.beyond_corner).metres(p.clear_of_crest).metres(p.cut).metres(p.staff_reading);
  csv.end_row();
}

// A point with nothing to say of pegs and strings.
void plain_row(CsvText& csv, std::string_view name, GridPoint at, Elevation height,
               std::string_view code) {
  csv.label(name).place(GridPosition{at, height}).word(code);
  for (int blank = 0; blank < 6; ++blank) csv.blank();
  csv.end_row();
}

void polar_row(CsvText& csv, const pegs::PolarRow& r, std::string_view kind) {
  csv.label(r.station).label(r.backsight).label(r.point).word(kind);
  csv.number(r.bearing.in_degrees());
  csv.number(r.turn ? std::optional(r.turn->in_degrees()) : std::nullopt);
  csv.metres(r.ground_distance).metres(r.grid_distance).metres(r.height_difference);
  csv.label(r.check_from).metres(r.check_distance).metres(r.staff_reading);
  csv.end_row();
}

}  // namespace

std::string pegs_csv(const pegs::PegsResult& result) {
  CsvText csv({"point", "easting", "northing", "height", "code", "corner", "string_line",
               "beyond_corner", "clear_of_crest", "cut_to_dig_level", "staff_reading"});
  for (const auto& p : result.reference) peg_row(csv, p);
  for (const auto& c : result.corners) plain_row(csv, c.name, c.at.at, c.at.height, "CORNER");
  for (const auto& p : result.pipes) plain_row(csv, p.name, p.at, p.invert, "PIPE");
  for (const auto& s : result.shafts) plain_row(csv, s.name, s.at, s.cover_level, "SHAFT");
  return csv.take();
}

std::string pegs_polar_csv(const pegs::PegsResult& result) {
  CsvText csv({"station", "backsight", "point", "kind", "bearing_deg", "turn_deg", "distance",
               "grid_distance", "height_difference", "check_from", "check_distance",
               "staff_reading"});
  std::string begun;
  for (const auto& row : result.polar) {
    if (row.station != begun)
      for (const auto& check : result.backsight_checks)
        if (check.station == row.station) polar_row(csv, check, "backsight check");
    begun = row.station;
    polar_row(csv, row, "set out");
  }
  return csv.take();
}

}  // namespace squaredig::formats
