#include "tables/table.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iostream>

#include "quantity/angle_text.h"
#include "quantity/number_text.h"

namespace squaredig::tables {
namespace {

bool starts_a_number(const std::string& text) {
  return !text.empty() && std::string("+-.0123456789").find(text.front()) != std::string::npos;
}

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts(1);
  for (const char c : text)
    if (c == at)
      parts.emplace_back();
    else
      parts.back() += c;
  for (std::string& part : parts) part = std::string(trimmed(part));
  return parts;
}

// "30.00 m" as 30.00 in the unit wanted; digits after the point as they are written.
struct Written {
  double value = 0;
  int decimals = 0;
};

Written written(const std::string& text, const std::string& unit) {
  const std::string end = unit.empty() ? "" : " " + unit;
  if (!text.ends_with(end)) throw UnknownWords{text};
  const std::string bare = text.substr(0, text.size() - end.size());
  const auto point = bare.find('.');
  return {number(bare), point == std::string::npos ? 0 : static_cast<int>(bare.size() - point - 1)};
}

}  // namespace

double number(const std::string& text) {
  const auto value = parse_number(text);
  if (!value) throw UnknownWords{text};
  return *value;
}

Line::Line(const std::string& text) : text_(text) {
  const auto colon = text.find(": "), arrow = text.find(" -> ");
  if (colon == std::string::npos || arrow == std::string::npos || arrow < colon)
    throw UnknownWords{text};
  what_ = text.substr(0, colon);
  for (auto& item : split(text.substr(colon + 1, arrow - colon - 1), ',')) given_.push_back({item});
  for (auto& item : split(text.substr(arrow + 4), ',')) wanted_.push_back({item});
}

// What follows the name in the item of that name; empty where there is none.
std::string Line::rest(std::vector<Item>& items, const std::string& name) {
  for (Item& item : items)
    if (item.text.starts_with(name + " ") && starts_a_number(item.text.substr(name.size() + 1))) {
      item.taken = true;
      return item.text.substr(name.size() + 1);
    }
  return "";
}

bool Line::has(const std::string& name) const {
  return std::any_of(given_.begin(), given_.end(), [&](const Item& item) {
    return item.text.starts_with(name + " ") && starts_a_number(item.text.substr(name.size() + 1));
  });
}

double Line::value(const std::string& name, const std::string& unit) {
  const std::string text = rest(given_, name);
  if (text.empty()) throw UnknownWords{text_ + ": without " + name};
  return written(text, unit).value;
}

double Line::value_or(const std::string& name, const std::string& unit, double otherwise) {
  return has(name) ? value(name, unit) : otherwise;
}

Batter Line::batter(const std::string& name) {
  const auto parts = split(rest(given_, name), ':');
  if (parts.size() != 2) throw UnknownWords{text_ + ": without " + name};
  return Batter::run_per_rise(number(parts[0]) / number(parts[1]));
}

Angle Line::angle(const std::string& name) {
  const auto angle = parse_angle(rest(given_, name), AngleNotation::DegreesMinutesSeconds);
  if (!angle) throw UnknownWords{text_ + ": without " + name};
  return *angle;
}

void Line::answer(const std::string& name, double computed, const std::string& unit) {
  const std::string text = rest(wanted_, name);
  if (text.empty()) return;
  const Written wanted = written(text, unit);
  const double half = 0.5 * std::pow(10.0, -wanted.decimals);
  if (!(std::abs(computed - wanted.value) <= half * (1 + 1e-9) + 1e-12))
    wrong_ += " " + name + " is " + fixed(computed, wanted.decimals + 1) + " " + unit;
}

void Line::answer(const std::string& name, const std::string& words) {
  for (Item& item : wanted_)
    if (item.text.starts_with(name + " ")) {
      item.taken = true;
      if (item.text != name + " " + words) wrong_ += " " + name + " is " + words;
    }
}

std::string Line::faults() const {
  for (const auto* items : {&given_, &wanted_})
    for (const Item& item : *items)
      if (!item.taken) throw UnknownWords{item.text};
  return wrong_;
}

int run(int argc, char** argv, const std::function<std::string(const std::string&)>& faults_of) {
  if (argc != 2) return 2;
  std::ifstream in(argv[1]);
  std::string text;
  int line = 0, cases = 0, failed = 0;
  while (std::getline(in, text)) {
    ++line;
    text = std::string(trimmed(text.substr(0, text.find('#'))));
    if (text.empty()) continue;
    const std::string place = std::string(argv[1]) + ":" + std::to_string(line) + ": ";
    try {
      ++cases;
      const std::string wrong = faults_of(text);
      if (wrong.empty()) continue;
      ++failed;
      std::cout << place << text << ":" << wrong << "\n";
    } catch (const UnknownWords& unknown) {
      std::cout << place << "not known: " << unknown.what() << "\n";
      return 2;
    }
  }
  std::cout << cases << " cases, " << failed << " failed\n";
  return cases > 0 && failed == 0 ? 0 : 1;
}

int run_lines(int argc, char** argv, const std::function<void(Line&)>& work) {
  return run(argc, argv, [&](const std::string& text) {
    Line line(text);
    work(line);
    return line.faults();
  });
}

}  // namespace squaredig::tables
