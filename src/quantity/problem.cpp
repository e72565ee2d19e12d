#include "quantity/problem.h"

namespace squaredig {
namespace {

std::string one_line(std::string_view raw) {
  std::string text(raw);
  for (char& c : text)
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = '?';
  return text;
}

}  // namespace

std::string Problem::text() const {
  return one_line(place.file + ":" + std::to_string(place.line) + ":" +
                  std::to_string(place.column) + ": " + found + "; " + needed + "; " + remedy);
}

void refuse(Place place, std::string found, std::string needed, std::string remedy) {
  throw Refusal(Problem{ProblemKind::Input, std::move(place), std::move(found), std::move(needed),
                        std::move(remedy)});
}

std::string quoted(std::string_view raw) {
  constexpr std::size_t kLongest = 80;
  std::string text = one_line(raw.substr(0, kLongest));
  // never cut a UTF-8 character in two
  if (raw.size() > kLongest) {
    while (!text.empty() && (static_cast<unsigned char>(raw[text.size()]) & 0xC0) == 0x80)
      text.pop_back();
    text += "...";
  }
  return "\"" + text + "\"";
}

}  // namespace squaredig
