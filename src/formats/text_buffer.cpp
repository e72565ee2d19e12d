#include "formats/text_buffer.h"

#include <cstring>

namespace squaredig::formats {
namespace {

constexpr std::size_t kChunk = std::size_t{1} << 18;

}  // namespace

TextBuffer::TextBuffer(const SourceFile& source) : file_(source), chunk_(file_.chunk(kChunk)) {
  more();
}

void TextBuffer::more() {
  if (ended_) return;
  const std::size_t kept = end_ - begin_;
  if (kept > 0) std::memmove(bytes_.data(), bytes_.data() + begin_, kept);
  if (bytes_.size() < kept + chunk_) bytes_.resize(kept + chunk_);
  begin_ = 0;
  const std::size_t got = file_.read({bytes_.data() + kept, chunk_});
  end_ = kept + got;
  ended_ = got < chunk_;
}

}  // namespace squaredig::formats
