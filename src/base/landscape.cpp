#include <algorithm>

#include "base/landscape_internal.h"
#include "base/outline_internal.h"
#include "geometry/sum.h"

namespace squaredig::base {
namespace {

// The part of a piece at or above a contour.
Piece above(const Piece& piece, double contour) {
  Piece out;
  const std::size_t n = piece.corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    const double at = piece.height[i] - contour, next = piece.height[j] - contour;
    if (at >= 0) {
      out.corners.push_back(piece.corners[i]);
      out.height.push_back(piece.height[i]);
    }
    if ((at > 0 && next < 0) || (at < 0 && next > 0)) {
      const double t = at / (at - next);
      out.corners.push_back(piece.corners[i] + t * (piece.corners[j] - piece.corners[i]));
      out.height.push_back(contour);
    }
  }
  return out;
}

Region measured(std::set<std::size_t> points, std::vector<Piece> pieces) {
  geometry::Sum area, volume;
  for (const Piece& p : pieces)
    for (std::size_t i = 2; i < p.corners.size(); ++i) {
      const double a = geometry::orient(p.corners[0], p.corners[i - 1], p.corners[i]) / 2;
      area.add(a);
      volume.add(a * (p.height[0] + p.height[i - 1] + p.height[i]) / 3);
    }
  return {std::move(points), std::move(pieces), area.value(), volume.value()};
}

}  // namespace

std::vector<geometry::Polygon> outlines(const std::vector<Piece>& pieces) {
  std::vector<geometry::Polygon> corners;
  corners.reserve(pieces.size());
  for (const Piece& piece : pieces) corners.push_back(piece.corners);
  return outline_of(corners);
}

double area_above(const Region& region, double contour) {
  geometry::Sum area;
  for (const Piece& piece : region.pieces)
    area.add(geometry::signed_area(above(piece, contour).corners));
  return area.value();
}

Landscape::Landscape(const Floor& floor, const DugSurface& dug, const geometry::Polygon& over,
                     double sign)
    : floor_(floor), sign_(sign), pieces_(dug.surface.triangles.size()) {
  const geometry::Locator locator(dug.surface);
  geometry::overlay(dug.surface, locator, parts_of(over), [&](const geometry::Overlap& o) {
    Piece piece{{o.corners.begin(), o.corners.end()}, {}};
    for (const double d : o.differences) piece.height.push_back(sign * d);
    pieces_[static_cast<std::size_t>(o.triangle)].push_back(std::move(piece));
  });
  link_points(dug);
}

void Landscape::link_points(const DugSurface& dug) {
  triangles_of_.resize(floor_.points.size());
  corners_of_.resize(dug.surface.triangles.size());
  for (std::size_t t = 0; t < dug.surface.triangles.size(); ++t)
    for (const geometry::Index v : dug.surface.triangles[t]) {
      const std::size_t point = dug.source[static_cast<std::size_t>(v)];
      corners_of_[t].push_back(point);
      if (triangles_of_[point].empty() || triangles_of_[point].back() != t)
        triangles_of_[point].push_back(t);
    }
}

// Along the common edge of two triangles the deviation is greatest at one of its ends, so shared
// corners are all that joins them.
Region Landscape::region(std::size_t peak, double contour) const {
  std::set<std::size_t> points{peak};
  std::set<std::size_t> triangles;
  std::vector<std::size_t> open{peak};
  while (!open.empty()) {
    const std::size_t point = open.back();
    open.pop_back();
    for (const std::size_t t : triangles_of_[point]) {
      if (!triangles.insert(t).second) continue;
      for (const std::size_t other : corners_of_[t])
        if (height(other) > contour && points.insert(other).second) open.push_back(other);
    }
  }
  std::vector<Piece> beyond;
  for (const std::size_t t : triangles)
    for (const Piece& piece : pieces_[t]) {
      Piece part = above(piece, contour);
      if (part.corners.size() >= 3) beyond.push_back(std::move(part));
    }
  return measured(std::move(points), std::move(beyond));
}

std::vector<RegionFound> regions_beyond(const Landscape& land, double limit) {
  constexpr double kSlack = 1e-9;
  std::vector<std::size_t> peaks;
  for (std::size_t i = 0; i < land.points(); ++i)
    if (land.height(i) > limit + kSlack) peaks.push_back(i);
  std::stable_sort(peaks.begin(), peaks.end(),
                   [&](std::size_t a, std::size_t b) { return land.height(a) > land.height(b); });
  std::vector<bool> taken(land.points(), false);
  std::vector<RegionFound> found;
  for (const std::size_t peak : peaks) {
    if (taken[peak]) continue;
    found.push_back({land.region(peak, limit), peak});
    for (const std::size_t point : found.back().region.points) taken[point] = true;
  }
  return found;
}

}  // namespace squaredig::base
