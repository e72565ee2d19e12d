#include "report/markup.h"

namespace squaredig::report {
namespace {

constexpr std::string_view kReplacement = "\xEF\xBF\xBD";

unsigned char byte(std::string_view text, std::size_t i) {
  return static_cast<unsigned char>(text[i]);
}

// The length of the well-formed character that starts at i; 0 where there is none (RFC 3629).
std::size_t character_at(std::string_view text, std::size_t i) {
  const unsigned char first = byte(text, i);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xC2 && first <= 0xDF   ? 2
                             : first >= 0xE0 && first <= 0xEF ? 3
                             : first >= 0xF0 && first <= 0xF4 ? 4
                                                              : 0;
  if (length == 0 || i + length > text.size()) return 0;
  for (std::size_t k = 1; k < length; ++k)
    if ((byte(text, i + k) & 0xC0) != 0x80) return 0;
  const unsigned char second = byte(text, i + 1);
  const bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
  const bool beyond = (first == 0xED && second > 0x9F) || (first == 0xF4 && second > 0x8F);
  return overlong || beyond ? 0 : length;
}

// Marks that turn or embed the direction of what follows (UAX 9): a label with one could show the
// figures after it in another order. Letters that run from right to left need none of them.
bool turns_direction(std::string_view character) {
  return (character >= "\xE2\x80\xAA" && character <= "\xE2\x80\xAE") ||
         (character >= "\xE2\x81\xA6" && character <= "\xE2\x81\xA9");
}

bool not_allowed(std::string_view character) {
  if (character.size() == 1) return byte(character, 0) < 0x20 || byte(character, 0) == 0x7F;
  if (character.size() == 2) return byte(character, 0) == 0xC2 && byte(character, 1) < 0xA0;
  return character == "\xEF\xBF\xBE" || character == "\xEF\xBF\xBF" || turns_direction(character);
}

}  // namespace

std::string clean_text(std::string_view text) {
  std::string clean;
  clean.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = character_at(text, i);
    const auto character = text.substr(i, length);
    if (character == "\n" || character == "\t" || character == "\r")
      clean += ' ';
    else if (length == 0 || not_allowed(character))
      clean += kReplacement;
    else
      clean += character;
    i += length == 0 ? 1 : length;
  }
  return clean;
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : clean_text(text)) switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  return out;
}

}  // namespace squaredig::report
