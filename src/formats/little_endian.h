// Numbers of a file that stores the lowest byte first, whatever this machine does.
//
// Requires: the bytes from `at` on are there.
// Errors: none.
// Source: ASPRS LAS 1.4 R15, section 2.2: "All data are in little-endian format".
#pragma once

#include <bit>
#include <cstdint>
#include <string_view>

namespace squaredig::formats {

template <class Whole>
Whole little(std::string_view bytes, std::size_t at) {
  Whole value = 0;
  for (std::size_t i = sizeof(Whole); i-- > 0;)
    value = static_cast<Whole>((value << 8) | static_cast<unsigned char>(bytes[at + i]));
  return value;
}
inline unsigned little_u16(std::string_view bytes, std::size_t at) {
  return static_cast<unsigned>(static_cast<unsigned char>(bytes[at])) |
         static_cast<unsigned>(static_cast<unsigned char>(bytes[at + 1])) << 8;
}
inline std::uint32_t little_u32(std::string_view bytes, std::size_t at) {
  return little<std::uint32_t>(bytes, at);
}
inline std::uint64_t little_u64(std::string_view bytes, std::size_t at) {
  return little<std::uint64_t>(bytes, at);
}
inline std::int32_t little_i32(std::string_view bytes, std::size_t at) {
  return std::bit_cast<std::int32_t>(little_u32(bytes, at));
}
inline double little_f64(std::string_view bytes, std::size_t at) {
  return std::bit_cast<double>(little_u64(bytes, at));
}

}  // namespace squaredig::formats
