#include "dig/quoted.h"

#include <vector>

#include "geometry/sum.h"

namespace squaredig::dig {

Volume end_area_volume(std::span<const Area> sections, std::span<const Length> lengths) {
  geometry::Sum sum;
  for (std::size_t i = 0; i + 1 < sections.size(); ++i)
    sum.add(((sections[i] + sections[i + 1]) / 2 * lengths[i]).in_cubic_metres());
  return Volume::cubic_metres(sum.value());
}

Volume end_area_volume(std::span<const Area> sections, Length spacing) {
  const std::vector<Length> lengths(sections.size(), spacing);
  return end_area_volume(sections, lengths);
}

Volume prismoidal_volume(std::span<const Area> sections, Length spacing) {
  geometry::Sum sum;
  std::size_t i = 0;
  for (; i + 2 < sections.size(); i += 2)
    sum.add(
        ((sections[i] + sections[i + 1] * 4 + sections[i + 2]) / 3 * spacing).in_cubic_metres());
  if (i + 1 < sections.size())
    sum.add(end_area_volume(sections.subspan(i), spacing).in_cubic_metres());
  return Volume::cubic_metres(sum.value());
}

Volume corner_grid_volume(std::span<const std::array<Length, 4>> cells, Area cell) {
  geometry::Sum depths;
  for (const auto& corners : cells)
    for (const Length depth : corners) depths.add(depth.in_metres());
  return cell * Length::metres(depths.value() / 4);
}

}  // namespace squaredig::dig
