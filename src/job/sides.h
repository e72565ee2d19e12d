// The names of the tank's sides, as far as the job file tells them.
//
// Errors: none.
// Source: the house's own, docs/job-file.md.
#pragma once

#include "job/table_reader.h"

namespace squaredig::job {

// Empty names: the outline is in a file, so that only the form of a name can be checked here.
struct Sides {
  std::vector<std::string> names;  // "AB", "BC", ...
};

// The sides of a footprint with that many corners.
Sides sides_of(std::size_t corners);
Rule<std::string> side_name(const Sides& sides);

// One value for all sides, or a table with one for each.
template <class T>
Rule<design::PerSide<T>> per_side(const Rule<T>& rule, const Sides& sides);
extern template Rule<design::PerSide<Length>> per_side(const Rule<Length>&, const Sides&);
extern template Rule<design::PerSide<Batter>> per_side(const Rule<Batter>&, const Sides&);

}  // namespace squaredig::job
