#include "job/nesting.h"

namespace squaredig::job {
namespace {

constexpr int kDeepestBrackets = 32;
constexpr int kLongestDottedKey = 32;

// Where the string that starts at `at` ends: one past its closing quote, or the end of the line or
// text where it is not closed.
std::size_t after_string(std::string_view text, std::size_t at) {
  const char quote = text[at];
  const std::string triple(3, quote);
  const bool many_lines = text.substr(at, 3) == triple;
  for (std::size_t i = at + (many_lines ? 3 : 1); i < text.size(); ++i) {
    if (text[i] == '\\' && quote == '"') {
      ++i;
    } else if (many_lines ? text.substr(i, 3) == triple : text[i] == quote) {
      return i + (many_lines ? 3 : 1);
    } else if (!many_lines && text[i] == '\n') {
      return i;
    }
  }
  return text.size();
}

Place place_at(std::string_view text, std::size_t at, std::string_view file) {
  Place place{std::string(file), 1, 1};
  for (const char c : text.substr(0, at)) {
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) {
      ++place.column;
    }
  }
  return place;
}

}  // namespace

std::optional<Place> too_deep(std::string_view text, std::string_view file) {
  int brackets = 0;
  int dots = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"' || c == '\'') {
      i = after_string(text, i) - 1;
      continue;
    }
    if (c == '#') {
      i = std::min(text.find('\n', i), text.size()) - 1;
      continue;
    }
    if (c == '[' || c == '{') ++brackets;
    if ((c == ']' || c == '}') && brackets > 0) --brackets;
    if (c == '.') ++dots;
    if (std::string_view("=,[]{}\n").find(c) != std::string_view::npos) dots = 0;
    if (brackets > kDeepestBrackets || dots > kLongestDottedKey) return place_at(text, i, file);
  }
  return std::nullopt;
}

}  // namespace squaredig::job
