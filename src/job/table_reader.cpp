#include "job/table_reader.h"

#include <algorithm>
#include <utility>

namespace squaredig::job {
namespace {

// How many letters must be changed, put in or left out to make one word of the other.
std::size_t edits_between(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = std::exchange(row[0], i);
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = std::exchange(row[j], std::min({changed, row[j] + 1, row[j - 1] + 1}));
    }
  }
  return row[b.size()];
}

// "[tank]"; "dig.ramp[1]" for one of a list.
std::string in_table(const std::string& path) {
  if (path.empty()) return "the job file";
  return path.back() == ']' ? path : "[" + path + "]";
}

}  // namespace

std::optional<std::string> nearest_word(std::string_view written,
                                        const std::set<std::string, std::less<>>& words) {
  std::optional<std::string> best;
  constexpr std::size_t kLongest = 64;
  if (written.size() > kLongest) return best;
  std::size_t least = std::max<std::size_t>(2, written.size() / 4) + 1;
  for (const std::string& word : words)
    if (const std::size_t edits = edits_between(written, word); edits < least) {
      least = edits;
      best = word;
    }
  return best;
}

TableReader::TableReader(const Node& node, Faults& faults) : node_(node), faults_(faults) {}

const Node* TableReader::find(std::string_view key) {
  known_.emplace(key);
  return node_.find(key);
}

Place TableReader::place_of(std::string_view key) const {
  const Node* value = node_.find(key);
  return value ? value->place : node_.key_place;
}

void TableReader::missing(std::string_view key, const std::string& words) {
  known_.emplace(key);
  faults_.add(node_.key_place, in_table(node_.path) + " without " + std::string(key),
              std::string(key) + " = " + words, "add the key to " + in_table(node_.path));
}

void TableReader::exclude(std::string_view one, std::string_view other, std::string_view why) {
  const Node* a = find(one);
  const Node* b = find(other);
  if (!a || !b) return;
  const bool a_later = std::pair(a->key_place.line, a->key_place.column) >
                       std::pair(b->key_place.line, b->key_place.column);
  faults_.add(
      a_later ? a->key_place : b->key_place,
      in_table(node_.path) + " with both " + std::string(one) + " and " + std::string(other),
      std::string(why), "delete one of the two");
}

std::vector<const Node*> TableReader::tables(std::string_view key) {
  std::vector<const Node*> found;
  const Node* list = find(key);
  if (!list) return found;
  const auto is_table = [](const Node& n) { return n.kind == Node::Kind::Table; };
  if (list->kind != Node::Kind::List ||
      !std::all_of(list->items.begin(), list->items.end(), is_table)) {
    faults_.wrong_value(*list, "a list of tables",
                        "write [[" + list->path + "]] above each, or [{ ... }, { ... }]");
    return found;
  }
  for (const Node& item : list->items) found.push_back(&item);
  return found;
}

const Node* TableReader::table(std::string_view key) {
  const Node* found = find(key);
  if (!found || found->kind == Node::Kind::Table) return found;
  faults_.wrong_value(*found, "a table", "write [" + found->path + "] and its keys below");
  return nullptr;
}

void TableReader::finish() {
  for (const Node& item : node_.items) {
    if (known_.contains(item.key)) continue;
    const auto near = nearest_word(item.key, known_);
    const bool table = item.kind == Node::Kind::Table && node_.path.empty();
    std::vector<std::string> known(known_.begin(), known_.end());
    faults_.add(item.key_place,
                (table ? "unknown table [" + item.key + "]"
                       : "unknown key " + quoted(item.key) + " in " + in_table(node_.path)),
                near ? "a key of " + in_table(node_.path) : "one of " + any_of(known),
                near ? "write " + *near + " if that was meant" : "delete it or correct the name");
  }
}

}  // namespace squaredig::job
