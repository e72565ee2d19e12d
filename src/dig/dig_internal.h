// The steps of the dig stage.
#pragma once

#include "design/laser.h"
#include "dig/dig.h"
#include "geometry/locate.h"

namespace squaredig::dig {

// Whether places lie within the crest: what Excavation::dug_at says, for many of them, by the
// crest's sides in rows from south to north.
class DugRows {
 public:
  explicit DugRows(const design::Excavation& pit);
  bool dug_at(GridPoint p) const;

 private:
  struct Side {
    geometry::Point2 from, to;
  };
  std::size_t row_of(double y) const;

  const design::Excavation& pit_;
  double low_ = 0, high_ = 0, height_ = 1;
  std::vector<std::vector<Side>> rows_;
};

struct Work {
  const DigInput& input;
  const design::DesignInput& design;
  const design::Excavation& pit;
  const ground::GroundSurface& ground;
  const geometry::Locator& locator;
  const DugRows& dug;
};

CellGrid cells_of(const Work& work, const std::optional<design::Laser>& laser);
CutRaster raster_of(const Work& work, const CellGrid& grid);
Comparison compare(const Work& work, const CellGrid& grid);
std::optional<Uncertainty> uncertainty_of(const Work& work);
std::optional<SpacingEffect> spacing_of(const Work& work);
void fill_to_floor(const Work& work, DigResult& result);
void add_parts(const Work& work, DigResult& result);
void add_closure(const Work& work, DigResult& result);
void add_keep_out(const Work& work, ground::Survey& survey, DigResult& result);
void add_vertical_faces(const Work& work, DigResult& result);
void add_cautions(const Work& work, DigResult& result);
void add_progress(const Work& work, DigResult& result);
void add_services(const Work& work, DigResult& result);

std::string at_text(GridPoint p);  // "E 715830.250 N 734697.600"

// Along the tank and across it, through its middle.
std::vector<Section> sections_of(const Work& work);

// The cut's depth over a piece: a linear function of position.
struct Depth {
  geometry::Plane top, bottom;
  double at(geometry::Point2 p) const { return top.at(p) - bottom.at(p); }
};
Depth depth_over(const Work& work, const geometry::Piece& piece);

}  // namespace squaredig::dig
