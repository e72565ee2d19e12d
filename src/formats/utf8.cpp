#include "formats/utf8.h"

#include <algorithm>

namespace squaredig::formats {
namespace {

// The number of bytes a UTF-8 sequence takes by its first byte, and the range of its second.
struct Sequence {
  std::size_t size;
  unsigned char low;
  unsigned char high;
};

Sequence sequence_of(unsigned char first) {
  if (first < 0x80) return {1, 0, 0};
  if (first < 0xC2) return {0, 0, 0};
  if (first < 0xE0) return {2, 0x80, 0xBF};
  if (first == 0xE0) return {3, 0xA0, 0xBF};
  if (first == 0xED) return {3, 0x80, 0x9F};
  if (first < 0xF0) return {3, 0x80, 0xBF};
  if (first == 0xF0) return {4, 0x90, 0xBF};
  if (first < 0xF4) return {4, 0x80, 0xBF};
  if (first == 0xF4) return {4, 0x80, 0x8F};
  return {0, 0, 0};
}

}  // namespace

bool is_utf8(std::string_view bytes) {
  for (std::size_t i = 0; i < bytes.size();) {
    const Sequence s = sequence_of(static_cast<unsigned char>(bytes[i]));
    if (s.size == 0 || i + s.size > bytes.size()) return false;
    for (std::size_t k = 1; k < s.size; ++k) {
      const auto c = static_cast<unsigned char>(bytes[i + k]);
      if (c < (k == 1 ? s.low : 0x80) || c > (k == 1 ? s.high : 0xBF)) return false;
    }
    i += s.size;
  }
  return true;
}

int characters(std::string_view bytes) {
  return static_cast<int>(std::count_if(bytes.begin(), bytes.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0) != 0x80;
  }));
}

}  // namespace squaredig::formats
