#include "job/table_reader.h"

#include <algorithm>

namespace squaredig::job {
namespace {

// How many letters must be changed, put in, left out or swapped with the next to make one word of
// the other.
std::size_t edits_between(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> edits(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        edits[i][j] = i + j;
        continue;
      }
      edits[i][j] = std::min({edits[i - 1][j] + 1, edits[i][j - 1] + 1,
                              edits[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        edits[i][j] = std::min(edits[i][j], edits[i - 2][j - 2] + 1);
    }
  }
  return edits[a.size()][b.size()];
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
  std::size_t least = std::max<std::size_t>(1, written.size() / 3) + 1;
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
                near ? (table ? "a table of the job file" : "a key of " + in_table(node_.path))
                     : "one of " + any_of(known),
                near ? "write " + *near + " if that was meant" : "delete it or correct the name");
  }
}

}  // namespace squaredig::job
