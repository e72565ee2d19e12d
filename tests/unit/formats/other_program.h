// Another program's reading of a file we wrote.
#pragma once

#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

namespace squaredig::testing {

inline bool has_program(const std::string& name) {
  return std::system((name + " --version >/dev/null 2>&1").c_str()) == 0;
}

// What the command writes, standard error included.
inline std::string output_of(const std::string& command) {
  std::string text;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  if (pipe == nullptr) return text;
  std::array<char, 4096> chunk{};
  for (std::size_t n; (n = fread(chunk.data(), 1, chunk.size(), pipe)) > 0;)
    text.append(chunk.data(), n);
  pclose(pipe);
  return text;
}

// The values of a field in a listing of ogrinfo, in order.
inline std::vector<std::string> ogr_values(const std::string& listing, const std::string& field) {
  std::vector<std::string> values;
  const std::string mark = "  " + field + " (String) = ";
  for (std::size_t at = 0; (at = listing.find(mark, at)) != std::string::npos;) {
    at += mark.size();
    values.push_back(listing.substr(at, listing.find('\n', at) - at));
  }
  return values;
}

inline std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size())
    ++count;
  return count;
}

// A drawing's \U+XXXX spelled out again.
inline std::string without_escapes(const std::string& text) {
  std::string out;
  unsigned high = 0;
  for (std::size_t i = 0; i < text.size();) {
    if (text.compare(i, 3, "\\U+") != 0) {
      out += text[i++];
      continue;
    }
    unsigned code = static_cast<unsigned>(std::stoul(text.substr(i + 3, 4), nullptr, 16));
    i += 7;
    if (code >= 0xD800 && code < 0xDC00) {
      high = code;
      continue;
    }
    if (code >= 0xDC00 && code < 0xE000)
      code = 0x10000 + ((high - 0xD800) << 10U) + (code - 0xDC00);
    const auto byte = [&](unsigned b) { out += static_cast<char>(b); };
    if (code < 0x80) {
      byte(code);
    } else if (code < 0x800) {
      byte(0xC0U | (code >> 6U)), byte(0x80U | (code & 63U));
    } else if (code < 0x10000) {
      byte(0xE0U | (code >> 12U)), byte(0x80U | ((code >> 6U) & 63U)), byte(0x80U | (code & 63U));
    } else {
      byte(0xF0U | (code >> 18U)), byte(0x80U | ((code >> 12U) & 63U));
      byte(0x80U | ((code >> 6U) & 63U)), byte(0x80U | (code & 63U));
    }
  }
  return out;
}

}  // namespace squaredig::testing
