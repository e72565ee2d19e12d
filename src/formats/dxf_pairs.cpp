#include "formats/dxf_pairs.h"

#include <charconv>
#include <cstring>

#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kChunk = std::size_t{1} << 18;
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
    : file_(source), name_(source.name), faults_(faults), buffer_(kChunk + kLongestLine) {
  end_ = file_.read({buffer_.data(), kChunk});
  ended_ = end_ < kChunk;
  const std::string_view start(buffer_.data(), end_);
  if (start.starts_with("\xEF\xBB\xBF")) begin_ = 3;
  if (trimmed(start.substr(0, 64)).empty()) fault("no content", "a drawing in DXF");
}

void DxfPairs::fault(std::string found, std::string needed) {
  broken_ = true;
  faults_.add({name_, line_ < 1 ? 1 : line_, 1}, std::move(found), std::move(needed),
              "export the drawing again as DXF in text form");
}

std::optional<std::string_view> DxfPairs::line_of_text() {
  for (std::size_t looked = 0;;) {
    const char* start = buffer_.data() + begin_;
    const std::size_t size = end_ - begin_;
    const void* feed = size > looked ? std::memchr(start + looked, '\n', size - looked) : nullptr;
    std::size_t length =
        feed == nullptr ? size : static_cast<std::size_t>(static_cast<const char*>(feed) - start);
    if (feed == nullptr && !ended_ && size < kLongestLine) {
      looked = size;
      std::memmove(buffer_.data(), start, size);
      const std::size_t got = file_.read({buffer_.data() + size, kChunk});
      begin_ = 0;
      end_ = size + got;
      ended_ = got < kChunk;
      continue;
    }
    if (feed == nullptr && size == 0) return std::nullopt;
    ++line_;
    begin_ += length + (feed != nullptr ? 1 : 0);
    if (length > kLongestLine || (feed == nullptr && !ended_)) {
      fault("a line of more than 64 KiB", "lines of a drawing in DXF");
      return std::nullopt;
    }
    std::string_view text(start, length);
    if (text.find('\0') != std::string_view::npos) {
      fault("a zero byte: a binary drawing", "a drawing in text form");
      return std::nullopt;
    }
    if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
    return text;
  }
}

const DxfPair* DxfPairs::next() {
  while (!broken_) {
    const auto code_text = line_of_text();
    if (!code_text) return nullptr;
    const auto code = whole(*code_text);
    if (!code) {
      // blank lines may follow the end
      if (trimmed(*code_text).empty() && ended_ && begin_ == end_) return nullptr;
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
