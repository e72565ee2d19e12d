#include "formats/dxf_pairs.h"

#include <algorithm>
#include <charconv>

#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kLongestLine = std::size_t{1} << 16;
constexpr int kComment = 999;

std::optional<int> whole(std::string_view text) {
  text = trimmed(text);
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

}  // namespace

DxfPairs::DxfPairs(const SourceFile& source, FaultList& faults)
    : bytes_(source), name_(source.name), faults_(faults) {
  const std::string_view start = bytes_.rest();
  if (start.starts_with("\xEF\xBB\xBF")) bytes_.take(3);
  if (trimmed(start.substr(0, 64)).empty()) fault("no content", "a drawing in DXF");
}

void DxfPairs::fault(std::string found, std::string needed) {
  broken_ = true;
  faults_.add({name_, line_ < 1 ? 1 : line_, 1}, std::move(found), std::move(needed),
              "export the drawing again as DXF in text form");
}

std::optional<std::string_view> DxfPairs::line_of_text() {
  std::string_view rest = bytes_.rest();
  std::size_t length = rest.find('\n');
  while (length == std::string_view::npos && !bytes_.ended() && rest.size() < kLongestLine) {
    const std::size_t looked = rest.size();
    bytes_.more();
    rest = bytes_.rest();
    length = rest.find('\n', looked);
  }
  if (rest.empty()) return std::nullopt;
  ++line_;
  const bool whole = length != std::string_view::npos || bytes_.ended();
  std::string_view text = rest.substr(0, length);
  if (!whole || text.size() > kLongestLine) {
    fault("a line of more than 64 KiB", "lines of a drawing in DXF");
    return std::nullopt;
  }
  bytes_.take(std::min(text.size() + 1, rest.size()));
  if (text.find('\0') != std::string_view::npos) {
    fault("a zero byte: a binary drawing", "a drawing in text form");
    return std::nullopt;
  }
  if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
  return text;
}

const DxfPair* DxfPairs::next() {
  while (!broken_) {
    const auto code_text = line_of_text();
    if (!code_text) return nullptr;
    const auto code = whole(*code_text);
    if (!code) {
      // blank lines may follow the end
      if (trimmed(*code_text).empty() && bytes_.ended() && bytes_.rest().empty()) return nullptr;
      fault("the group code " + quoted(*code_text), "a whole number");
      return nullptr;
    }
    pair_.code = *code;
    const auto value = line_of_text();
    if (broken_) return nullptr;
    if (!value) {
      fault("a group code without a value", "a value on the next line");
      return nullptr;
    }
    if (*code == kComment) continue;
    const bool text = *code == 1 || *code == 3;
    pair_.value = std::string(text ? *value : trimmed(*value));
    pair_.line = line_;
    return &pair_;
  }
  return nullptr;
}

}  // namespace squaredig::formats
