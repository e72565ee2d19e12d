#include "job/plain_toml.h"

namespace squaredig::job {
namespace {

constexpr int kDeepestBrackets = 32;
constexpr int kLongestDottedKey = 32;

enum class Misfit { None, ThreeQuotes, BeyondAscii, TooDeep };

// Walks over the text from token to token, as far as it must be understood here.
class Walk {
 public:
  explicit Walk(std::string_view text) : text_(text) {
    if (text_.substr(0, 3) == "\xEF\xBB\xBF") at_ = 3;
  }

  Misfit find() {
    for (; at_ < text_.size(); ++at_) {
      const char c = text_[at_];
      if (c == '"' || c == '\'') {
        if (text_.substr(at_, 3) == std::string(3, c)) return Misfit::ThreeQuotes;
        to_end_of_string();
      } else if (c == '#') {
        at_ = std::min(text_.find('\n', at_), text_.size()) - 1;
      } else if (static_cast<unsigned char>(c) >= 0x80) {
        return Misfit::BeyondAscii;
      } else if (count(c) == Misfit::TooDeep) {
        return Misfit::TooDeep;
      }
    }
    return Misfit::None;
  }
  std::size_t at() const { return at_; }

 private:
  // On to the closing quote, or before the end of the line where there is none.
  void to_end_of_string() {
    const char quote = text_[at_];
    while (at_ + 1 < text_.size() && text_[at_ + 1] != '\n') {
      ++at_;
      if (text_[at_] == quote) return;
      if (text_[at_] == '\\' && quote == '"' && at_ + 1 < text_.size() && text_[at_ + 1] != '\n')
        ++at_;
    }
  }

  Misfit count(char c) {
    if (c == '[' || c == '{') ++brackets_;
    if ((c == ']' || c == '}') && brackets_ > 0) --brackets_;
    if (c == '.') ++dots_;
    if (std::string_view("=,[]{}\n").find(c) != std::string_view::npos) dots_ = 0;
    return brackets_ > kDeepestBrackets || dots_ > kLongestDottedKey ? Misfit::TooDeep
                                                                     : Misfit::None;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  int brackets_ = 0;
  int dots_ = 0;
};

Place place_at(std::string_view text, std::size_t at, std::string_view file) {
  Place place{std::string(file), 1, 1};
  for (const char c : text.substr(0, at)) {
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((static_cast<unsigned char>(c) & 0xC0) != 0x80) {
      ++place.column;
    }
  }
  return place;
}

}  // namespace

std::optional<Problem> not_plain(std::string_view text, std::string_view file) {
  Walk walk(text);
  const Misfit misfit = walk.find();
  if (misfit == Misfit::None) return std::nullopt;
  const Place place = place_at(text, walk.at(), file);
  const auto problem = [&](const char* found, const char* needed, const char* remedy) {
    return Problem{ProblemKind::Input, place, found, needed, remedy};
  };
  switch (misfit) {
    case Misfit::ThreeQuotes:
      return problem("text in three quotes", "text on one line, in one quote at each end",
                     "write the text in single or double quotes");
    case Misfit::BeyondAscii:
      return problem("a character other than plain letters, digits and signs, outside quotes",
                     "such characters in quotes or behind #", "put it in quotes, or take it out");
    default:
      return problem("brackets or dotted keys nested over 32 deep",
                     "tables and lists as the job file has them", "correct this line");
  }
}

}  // namespace squaredig::job
