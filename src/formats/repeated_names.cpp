#include "formats/repeated_names.h"

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <functional>
#include <string_view>

namespace squaredig::formats {
namespace {

// The number a name is, in its plainest spelling; below zero for any other name.
std::int64_t plain_number(std::string_view name) {
  if (name.empty() || name.size() > 17 || name.front() == '0') return -1;
  std::int64_t value = -1;
  const auto [end, error] = std::from_chars(name.data(), name.data() + name.size(), value);
  return error == std::errc{} && end == name.data() + name.size() ? value : -1;
}

bool numbered_upward(const PointTable& table, std::size_t first) {
  std::int64_t last = 0;
  for (std::size_t i = first; i < table.size(); ++i) {
    const std::int64_t value = plain_number(table.label(i));
    if (value <= last) return false;
    last = value;
  }
  return true;
}

}  // namespace

std::vector<RepeatedName> repeated_names(const PointTable& table, std::size_t first) {
  std::vector<RepeatedName> repeated;
  if (numbered_upward(table, first)) return repeated;
  struct Hashed {
    std::uint32_t hash;
    std::uint32_t index;
  };
  std::vector<Hashed> order;
  order.reserve(table.size() - first);
  for (std::size_t i = first; i < table.size(); ++i)
    order.push_back({static_cast<std::uint32_t>(std::hash<std::string_view>()(table.label(i))),
                     static_cast<std::uint32_t>(i)});
  std::sort(order.begin(), order.end(), [](const Hashed& a, const Hashed& b) {
    return a.hash != b.hash ? a.hash < b.hash : a.index < b.index;
  });
  std::vector<std::pair<std::uint32_t, std::uint32_t>> found;  // the later point, the first
  for (auto run = order.begin(); run != order.end();) {
    const auto end =
        std::find_if(run, order.end(), [&](const Hashed& h) { return h.hash != run->hash; });
    for (auto later = run + 1; later < end; ++later) {
      const auto same = std::find_if(run, later, [&](const Hashed& h) {
        return table.label(h.index) == table.label(later->index);
      });
      if (same != later) found.emplace_back(later->index, same->index);
    }
    run = end;
  }
  std::sort(found.begin(), found.end());
  for (const auto& [later, earlier] : found)
    repeated.push_back({std::string(table.label(later)), static_cast<int>(table.points[later].line),
                        static_cast<int>(table.points[earlier].line)});
  return repeated;
}

void tell_repeated(const std::vector<RepeatedName>& repeated, const std::string& file,
                   std::vector<std::string>& cautions) {
  const auto named = std::find_if(repeated.begin(), repeated.end(),
                                  [](const RepeatedName& r) { return !r.name.empty(); });
  if (named == repeated.end()) return;
  const auto blank = std::count_if(repeated.begin(), repeated.end(),
                                   [](const RepeatedName& r) { return r.name.empty(); });
  const auto count = static_cast<std::int64_t>(repeated.size()) - blank;
  cautions.push_back(file + ": " + std::to_string(count) +
                     (count == 1 ? " point has a name" : " points have names") +
                     " used before in the file, first " + quoted(named->name) + " in lines " +
                     std::to_string(named->first_line) + " and " + std::to_string(named->line));
}

void refuse_repeated(const std::vector<RepeatedName>& repeated, const std::string& file,
                     FaultList& faults) {
  for (const RepeatedName& r : repeated)
    if (!r.name.empty())
      faults.add({file, r.line, 1}, "the point name " + quoted(r.name) + " again",
                 "each name once, and it stands in line " + std::to_string(r.first_line),
                 "rename or take out one of the two");
}

}  // namespace squaredig::formats
