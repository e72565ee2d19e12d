#include "formats/dxf_text.h"

#include <array>
#include <charconv>

#include "formats/utf8.h"

namespace squaredig::formats {
namespace {

// What the bytes 0x80 to 0x9F of windows-1252 stand for; the others are their own numbers.
constexpr std::array<unsigned, 32> kHigh = {
    0x20AC, 0x81,   0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x8D,   0x017D, 0x8F,   0x90,   0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x9D,   0x017E, 0x0178};

void append(std::string& text, unsigned code) {
  const auto byte = [&](unsigned b) { text.push_back(static_cast<char>(b)); };
  if (code < 0x80) return byte(code);
  if (code < 0x800) {
    byte(0xC0U | code >> 6U);
  } else if (code < 0x10000) {
    byte(0xE0U | code >> 12U);
    byte(0x80U | (code >> 6U & 63U));
  } else {
    byte(0xF0U | code >> 18U);
    byte(0x80U | (code >> 12U & 63U));
    byte(0x80U | (code >> 6U & 63U));
  }
  byte(0x80U | (code & 63U));
}

std::optional<unsigned> number(std::string_view digits, int base, std::size_t count) {
  unsigned value = 0;
  if (digits.size() < count) return std::nullopt;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + count, value, base);
  if (error != std::errc{} || end != digits.data() + count) return std::nullopt;
  return value;
}

std::string from_1252(std::string_view raw) {
  std::string text;
  for (const char c : raw) {
    const auto byte = static_cast<unsigned char>(c);
    append(text, byte >= 0x80 && byte < 0xA0 ? kHigh[byte - 0x80U] : byte);
  }
  return text;
}

// A code of two per cent signs at the beginning: what it stands for, and its length.
struct Sign {
  std::string text;
  std::size_t length = 0;
};
Sign sign_at(std::string_view rest) {
  const char letter = rest.size() > 2 ? static_cast<char>(rest[2] | 0x20) : '\0';
  if (letter == 'd') return {"\u00B0", 3};
  if (letter == 'p') return {"\u00B1", 3};
  if (letter == 'c') return {"\u2300", 3};
  if (letter == 'u' || letter == 'o' || letter == 'k') return {"", 3};  // lines round the text
  if (rest.size() > 2 && rest[2] == '%') return {"%", 3};
  const auto code = number(rest.substr(2), 10, 3);
  Sign sign;
  if (!code || *code < 0x20 || *code > 0xFF) return sign;
  append(sign.text, *code);
  sign.length = 5;
  return sign;
}

}  // namespace

std::optional<std::string> dxf_text(std::string_view raw, DxfTextKind kind,
                                    std::string_view code_page) {
  std::string whole(raw);
  if (!is_utf8(whole)) {
    if (code_page != "ANSI_1252") return std::nullopt;
    whole = from_1252(raw);
  }
  std::string text;
  unsigned high = 0;  // the first half of a character beyond the first plane
  for (std::size_t i = 0; i < whole.size();) {
    const std::string_view rest(whole.data() + i, whole.size() - i);
    const auto code = rest.starts_with("\\U+") ? number(rest.substr(3), 16, 4) : std::nullopt;
    if (code) {
      i += 7;
      if (*code >= 0xD800 && *code < 0xDC00)
        high = *code;
      else if (*code >= 0xDC00 && *code < 0xE000)
        append(text, high == 0 ? 0xFFFD : 0x10000 + ((high - 0xD800) << 10U) + (*code - 0xDC00));
      else
        append(text, *code);
      if (*code < 0xD800 || *code >= 0xDC00) high = 0;
      continue;
    }
    if (kind == DxfTextKind::Drawn && rest.starts_with("^ ")) {  // a caret alone
      text.push_back('^');
      i += 2;
      continue;
    }
    const Sign sign = kind == DxfTextKind::Drawn && rest.starts_with("%%") ? sign_at(rest) : Sign{};
    text += sign.length > 0 ? sign.text : std::string(1, whole[i]);
    i += sign.length > 0 ? sign.length : 1;
  }
  return text;
}

}  // namespace squaredig::formats
