// Fuzzer of numbers in text: read and written as the standard library does, to the last bit.
#include <array>
#include <bit>
#include <charconv>
#include <cstring>

#include "formats/input_file.h"
#include "fuzz/fuzz_target.h"
#include "quantity/number_text.h"

namespace squaredig::fuzz {
namespace {

std::optional<double> by_the_library(std::string_view text) {
  text = trimmed(text);
  const bool plus = !text.empty() && text.front() == '+';
  if (plus) text.remove_prefix(1);
  if (plus && !text.empty() && text.front() == '-') return std::nullopt;
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

void same(std::optional<double> a, std::optional<double> b) {
  wanted(a.has_value() == b.has_value());
  if (a) wanted(std::bit_cast<std::uint64_t>(*a) == std::bit_cast<std::uint64_t>(*b));
}

void written(double value) {
  if (!std::isfinite(value)) return;
  const std::string text = shortest(value);
  std::array<char, 64> room{};
  const double plain = value == 0 ? 0 : value;
  const char* const end = std::to_chars(room.data(), room.data() + room.size(), plain).ptr;
  wanted(text == std::string_view(room.data(), end));
  same(parse_number(text), plain);
}

}  // namespace

// Each line of the text as a number, each eight bytes of it as a double, and each number read
// rounded to as many decimals as coordinates have.
void read_input(const formats::SourceFile& file) {
  const std::string bytes = formats::read_whole(file);
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', at), bytes.size());
    const std::string_view line(bytes.data() + at, end - at);
    const auto value = parse_number(line);
    same(value, by_the_library(line));
    if (value) written(*value);
    for (const double scale : {10.0, 1e3, 1e4})
      if (value && std::abs(*value) < 1e11) written(std::round(*value * scale) / scale);
    at = end + 1;
  }
  for (std::size_t at = 0; at + sizeof(double) <= bytes.size(); at += sizeof(double)) {
    double value = 0;
    std::memcpy(&value, bytes.data() + at, sizeof value);
    written(value);
  }
}

}  // namespace squaredig::fuzz
