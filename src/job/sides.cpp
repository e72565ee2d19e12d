#include "job/sides.h"

#include <algorithm>

namespace squaredig::job {
namespace {

std::string corner_name(std::size_t i) {
  return i < 26 ? std::string(1, static_cast<char>('A' + i))
                : corner_name(i / 26 - 1) + static_cast<char>('A' + i % 26);
}

bool has_form_of_side(std::string_view name) {
  return name.size() >= 2 && name.size() <= 6 &&
         std::all_of(name.begin(), name.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

std::string words_for(const Sides& sides) {
  constexpr std::size_t kShown = 8;
  if (sides.names.empty() || sides.names.size() > kShown)
    return "a side such as AB, named by its two corners in order";
  return "a side: " + any_of(sides.names);
}

bool is_side(std::string_view name, const Sides& sides) {
  if (sides.names.empty()) return has_form_of_side(name);
  return std::find(sides.names.begin(), sides.names.end(), name) != sides.names.end();
}

}  // namespace

Sides sides_of(std::size_t corners) {
  Sides sides;
  for (std::size_t i = 0; i < corners; ++i)
    sides.names.push_back(corner_name(i) + corner_name((i + 1) % corners));
  return sides;
}

Rule<std::string> side_name(const Sides& sides) {
  const std::string words = words_for(sides);
  return {words, [=](const Node& node, Faults& faults) -> std::optional<std::string> {
            if (node.kind == Node::Kind::Text && is_side(node.text, sides)) return node.text;
            faults.wrong_value(node, words, "write the side in quotes, clockwise from A");
            return std::nullopt;
          }};
}

template <class T>
Rule<design::PerSide<T>> per_side(const Rule<T>& rule, const Sides& sides) {
  const std::string words = rule.words + ", or a table with one for each side";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<design::PerSide<T>> {
            design::PerSide<T> value;
            value.place = node.place;
            if (node.kind != Node::Kind::Table) {
              value.all = rule.read(node, faults);
              return value;
            }
            for (const Node& item : node.items) {
              if (!is_side(item.key, sides))
                faults.add(item.key_place, node.path + " with " + quoted(item.key),
                           words_for(sides), "correct the name of the side");
              else if (auto read = rule.read(item, faults))
                value.by_side.emplace_back(item.key, *read);
            }
            for (const std::string& name : sides.names)
              if (!node.find(name))
                faults.add(node.key_place, node.path + " without side " + name,
                           "a value for each side", "add " + name + " = ...");
            if (node.items.empty())
              faults.wrong_value(node, words, "give one value, or one for each side");
            return value;
          }};
}
template Rule<design::PerSide<Length>> per_side(const Rule<Length>&, const Sides&);
template Rule<design::PerSide<Batter>> per_side(const Rule<Batter>&, const Sides&);

}  // namespace squaredig::job
