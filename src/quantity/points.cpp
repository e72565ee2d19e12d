#include "quantity/points.h"

#include <limits>

namespace squaredig {

std::string_view PointTable::text_at(std::uint32_t start) const {
  const std::size_t low = static_cast<unsigned char>(texts_[start]);
  const std::size_t high = static_cast<unsigned char>(texts_[start + 1]);
  return {texts_.data() + start + 2, low + 256 * high};
}

void PointTable::add(SurveyPoint point, std::string_view label, std::string_view code) {
  constexpr std::size_t kLongestLabel = 65535;
  if (label.size() > kLongestLabel ||
      texts_.size() + label.size() + 2 > std::numeric_limits<std::uint32_t>::max())
    refuse({files.empty() ? "" : files[point.file], static_cast<int>(point.line), 1},
           "labels that are too long to keep", "labels below 65 536 bytes, below 4 GB together",
           "split the file or shorten the labels");
  point.label = static_cast<std::uint32_t>(texts_.size());
  texts_.push_back(static_cast<char>(label.size() & 0xFF));
  texts_.push_back(static_cast<char>(label.size() >> 8));
  texts_.append(label);
  if (points.empty() || codes_[points.back().code] != code) {
    const auto [found, fresh] =
        code_numbers_.try_emplace(std::string(code), static_cast<std::uint32_t>(codes_.size()));
    if (fresh) codes_.emplace_back(code);
    point.code = found->second;
  } else {
    point.code = points.back().code;  // runs of one code are the rule
  }
  points.push_back(point);
}

std::uint16_t PointTable::add_file(std::string file) {
  files.push_back(std::move(file));
  return static_cast<std::uint16_t>(files.size() - 1);
}

std::optional<std::size_t> PointTable::find(std::string_view label) const {
  for (std::size_t i = 0; i < points.size(); ++i)
    if (this->label(i) == label) return i;
  return std::nullopt;
}

}  // namespace squaredig
