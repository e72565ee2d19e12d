// Made-up grounds for the tests of this room. Seeds are fixed and are printed on failure.
#pragma once

#include <algorithm>
#include <random>

#include "geometry/triangulate.h"

namespace squaredig::geometry::testing {

// A whole number of millimetres from 0 up to `metres`.
inline double random_millimetres(std::mt19937& random, double metres) {
  return static_cast<double>(random() % static_cast<unsigned>(metres * 1000)) / 1000;
}

// Points at random in a square, to the millimetre, over gentle hills.
inline std::vector<Point3> random_points(std::size_t count, double side, unsigned seed) {
  std::mt19937 random(seed);
  std::vector<Point3> out;
  while (out.size() < count) {
    const double x = random_millimetres(random, side), y = random_millimetres(random, side);
    out.push_back({x, y, 2 + x * y / (side * side) + 0.01 * static_cast<double>(random() % 100)});
  }
  return out;
}

// Every square of it is cocircular.
inline std::vector<Point3> exact_grid(int columns, int rows, double spacing) {
  std::vector<Point3> out;
  for (int r = 0; r < rows; ++r)
    for (int c = 0; c < columns; ++c)
      out.push_back({c * spacing, r * spacing, 0.1 * ((7 * c + 3 * r) % 5)});
  return out;
}

inline std::vector<Index> shuffle(std::vector<Point3>& points, unsigned seed) {
  std::vector<Index> order(points.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<Index>(i);
  std::mt19937 random(seed);
  for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[random() % i]);
  std::vector<Point3> moved;
  for (const Index i : order) moved.push_back(points[static_cast<std::size_t>(i)]);
  points = moved;
  std::vector<Index> now(order.size());
  for (std::size_t i = 0; i < order.size(); ++i)
    now[static_cast<std::size_t>(order[i])] = static_cast<Index>(i);
  return now;  // now[old] = new place
}

// Area of the convex hull, by the monotone chain: the second answer for a plan area.
inline double hull_area(std::vector<Point3> points) {
  std::sort(points.begin(), points.end(),
            [](const Point3& a, const Point3& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  double twice = 0;
  for (int pass = 0; pass < 2; ++pass) {
    std::vector<Point2> chain;
    for (const Point3& p : points) {
      while (chain.size() > 1 && orient(chain[chain.size() - 2], chain.back(), p.plan()) <= 0)
        chain.pop_back();
      chain.push_back(p.plan());
    }
    for (std::size_t i = 1; i < chain.size(); ++i)
      twice += cross(chain[i - 1] - Point2{points[0].x, points[0].y},
                     chain[i] - Point2{points[0].x, points[0].y});
    std::reverse(points.begin(), points.end());
  }
  return twice / 2;
}

inline bool has_edge(const Surface& s, Point2 a, Point2 b) {
  for (const auto& t : s.triangles)
    for (std::size_t i = 0; i < 3; ++i) {
      const Point2 p = s.vertices[static_cast<std::size_t>(t[i])].plan();
      const Point2 q = s.vertices[static_cast<std::size_t>(t[(i + 1) % 3])].plan();
      if ((p == a && q == b) || (p == b && q == a)) return true;
    }
  return false;
}

inline TriangulationInput points_alone(std::vector<Point3> points) {
  return {std::move(points), {}, {}, 0};
}

}  // namespace squaredig::geometry::testing
