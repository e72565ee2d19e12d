// How tests read a drawing or a page: what matches, and the structure of an SVG against a golden
// one.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <regex>
#include <sstream>

namespace squaredig::report {

inline std::vector<std::string> all(const std::string& text, const std::string& pattern) {
  const std::regex regex(pattern);
  std::vector<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), regex), end; it != end; ++it)
    found.push_back((*it)[1]);
  return found;
}

inline bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// The structure of a drawing: a line for each element with its class, its text, and its numbers in
// whole millimetres.
inline std::string structure(const std::string& svg) {
  const std::regex element("<(/?)([a-z]+)([^>]*)>([^<]*)");
  std::string lines;
  for (std::sregex_iterator it(svg.begin(), svg.end(), element), end; it != end; ++it) {
    if ((*it)[1].length()) continue;
    std::string line = (*it)[2];
    for (const char* name : {"class", "x", "y", "cx", "cy", "d"}) {
      std::smatch value;
      const std::string attributes = (*it)[3];
      if (!std::regex_search(attributes, value,
                             std::regex(std::string(" ") + name + "=\"([^\"]*)\"")))
        continue;
      std::string text = value[1];
      if (std::string(name) != "class") {
        std::string rounded;
        for (const auto& n : all(text, "(" + std::string("-?[0-9]+\\.?[0-9]*") + ")"))
          rounded += " " + std::to_string(std::lround(std::stod(n)));
        text = rounded;
      }
      line += " " + std::string(name) + ":" + text;
    }
    const std::string said = (*it)[4];
    if (said.find_first_not_of("\n ") != std::string::npos) line += " \"" + said + "\"";
    lines += line + "\n";
  }
  return lines;
}

inline void expect_golden(const std::string& name, const std::string& svg) {
  const std::string path =
      std::string(SQUAREDIG_SOURCE) + "/tests/unit/report/golden/" + name + ".txt";
  const std::string now = structure(svg);
  if (std::getenv("SQUAREDIG_UPDATE_GOLDEN")) std::ofstream(path) << now;  // into the source
  std::ifstream file(path);
  std::ostringstream golden;
  golden << file.rdbuf();
  EXPECT_EQ(golden.str(), now) << "the layout of " << name
                               << " changed: look at it, then run with SQUAREDIG_UPDATE_GOLDEN=1";
}

}  // namespace squaredig::report
