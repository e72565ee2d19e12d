#include "job/document.h"

// The parser asserts in one place what it then checks and refuses, as with the header "[=]".
// Without the assertion the check is reached in every build; NDEBUG would let some compilers rely
// on it.
#undef NDEBUG
#define TOML_ASSERT(expression) static_assert(true)
#include <toml++/toml.h>

#include <algorithm>

#include "job/plain_toml.h"
#include "quantity/number_text.h"

namespace squaredig::job {
namespace {

Place place_of(const toml::source_region& source, std::string_view file) {
  const auto at_least_one = [](auto n) { return std::max(1, static_cast<int>(n)); };
  return {std::string(file), at_least_one(source.begin.line), at_least_one(source.begin.column)};
}

bool has(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

// The name between the last pair of single quotes.
std::string last_name(std::string_view text) {
  const auto end = text.rfind('\'');
  if (end == std::string_view::npos || end == 0) return {};
  const auto start = text.rfind('\'', end - 1);
  if (start == std::string_view::npos) return {};
  return std::string(text.substr(start + 1, end - start - 1));
}

Problem problem(Place place, std::string found, std::string needed, std::string remedy) {
  return {ProblemKind::Input, std::move(place), std::move(found), std::move(needed),
          std::move(remedy)};
}

// The parser's own account of a syntax fault, said as the rest of the job file's faults are.
Problem syntax_fault(const toml::parse_error& error, std::string_view file) {
  const Place place = place_of(error.source(), file);
  const std::string_view said = error.description();
  if (has(said, "utf-8"))
    return problem(place, "bytes that are not UTF-8", "UTF-8 text", "save the file as UTF-8");
  if (has(said, "cannot redefine existing table"))
    return problem(place, "table [" + last_name(said) + "] a second time", "each table once",
                   "join the two");
  if (has(said, "cannot redefine"))
    return problem(place, "a key that was given before, " + quoted(last_name(said)),
                   "each key once in its table", "delete one of the two lines");
  if (has(said, "could not determine value type"))
    return problem(place, "a value that is no number, date, true or false", "text in quotes",
                   "put quotes round the text, or correct the value");
  if (has(said, "saw ','"))
    return problem(place, "a comma behind a value",
                   "one value for a key, with a decimal point and not a comma",
                   "correct this line");
  if (has(said, "control characters"))
    return problem(place, "a text that is not closed on its line, or a control character",
                   "text in quotes on one line", "close the quotes, or take the character out");
  if (has(said, "parsing date"))
    return problem(place, "a day that no calendar has", "a date such as 2026-03-02",
                   "correct the date");
  if (has(said, "could not be interpreted") || has(said, "not representable"))
    return problem(place, "a number too large to be kept", "a number such as 1.32",
                   "correct the value");
  return problem(place, "a line that is no key with its value, and no table",
                 "lines such as height = 1.32, name = \"text\" or [table]", "correct this line");
}

class Builder {
 public:
  explicit Builder(std::string_view file) : file_(file) {}

  Node table(const toml::table& source, std::string path) {
    Node node = start(Node::Kind::Table, source, std::move(path));
    for (auto&& [key, value] : source) {
      Node item = built(value, node.path.empty() ? std::string(key.str())
                                                 : node.path + "." + std::string(key.str()));
      item.key = key.str();
      item.key_place = place_of(key.source(), file_);
      node.items.push_back(std::move(item));
    }
    std::stable_sort(node.items.begin(), node.items.end(), [](const Node& a, const Node& b) {
      return std::pair(a.key_place.line, a.key_place.column) <
             std::pair(b.key_place.line, b.key_place.column);
    });
    return node;
  }

 private:
  Node start(Node::Kind kind, const toml::node& source, std::string path) {
    Node node;
    node.kind = kind;
    node.path = std::move(path);
    node.place = place_of(source.source(), file_);
    node.key_place = node.place;
    return node;
  }

  Node list(const toml::array& source, std::string path) {
    Node node = start(Node::Kind::List, source, std::move(path));
    for (std::size_t i = 0; i < source.size(); ++i)
      node.items.push_back(built(source[i], node.path + "[" + std::to_string(i + 1) + "]"));
    return node;
  }

  Node built(const toml::node& source, std::string path) {
    if (const auto* t = source.as_table()) return table(*t, std::move(path));
    if (const auto* a = source.as_array()) return list(*a, std::move(path));
    Node node = start(Node::Kind::Moment, source, std::move(path));
    if (const auto* s = source.as_string()) {
      node.kind = Node::Kind::Text;
      node.text = s->get();
    } else if (const auto* i = source.as_integer()) {
      node.kind = Node::Kind::Number;
      node.number = static_cast<double>(i->get());
      node.whole = true;
    } else if (const auto* f = source.as_floating_point()) {
      node.kind = Node::Kind::Number;
      node.number = f->get();
    } else if (const auto* b = source.as_boolean()) {
      node.kind = Node::Kind::Truth;
      node.truth = b->get();
    } else if (const auto* d = source.as_date()) {
      node.kind = Node::Kind::Date;
      node.date = std::chrono::year_month_day(std::chrono::year(d->get().year),
                                              std::chrono::month(d->get().month),
                                              std::chrono::day(d->get().day));
    }
    return node;
  }

  std::string_view file_;
};

std::string counted(std::size_t n, const char* what) {
  return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
}

}  // namespace

const Node* Node::find(std::string_view wanted) const {
  for (const Node& item : items)
    if (item.key == wanted) return &item;
  return nullptr;
}

std::string Node::described() const {
  switch (kind) {
    case Kind::Text:
      return quoted(text);
    case Kind::Number:
      return shortest(number);
    case Kind::Truth:
      return truth ? "true" : "false";
    case Kind::Date:
      return "a date";
    case Kind::Moment:
      return "a time";
    case Kind::List:
      return items.empty() ? "an empty list" : "a list of " + counted(items.size(), "value");
    default:
      return "a table of " + counted(items.size(), "key");
  }
}

Node parse_document(std::string_view text, std::string_view file) {
  constexpr std::size_t kLongest = std::size_t{4} << 20;
  if (text.size() > kLongest)
    throw Refusal(problem({std::string(file), 1, 1},
                          "a job file of " + std::to_string(text.size()) + " bytes",
                          "at most 4 194 304 bytes", "move long lists of points into files"));
  if (const auto misfit = not_plain(text, file)) throw Refusal(*misfit);
  try {
    return Builder(file).table(toml::parse(text), "");
  } catch (const toml::parse_error& error) {
    throw Refusal(syntax_fault(error, file));
  }
}

}  // namespace squaredig::job
