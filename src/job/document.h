// The job file as written: a tree of values, each with the path of its keys and its place.
//
// Laws: document.1 the order of keys and elements is the order of the file.
// Errors: parse_document throws a Refusal where the text is not TOML, with the place of the first
//   such fault; depth is limited, so that no text can exhaust the stack.
// Source: TOML 1.0.
#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "quantity/problem.h"

namespace squaredig::job {

struct Node {
  enum class Kind { Text, Number, Truth, Date, Moment, List, Table };
  Kind kind = Kind::Table;
  std::string key;   // empty for elements of a list
  std::string path;  // "dig.ramp[1].side"
  Place key_place;
  Place place;
  std::string text;
  double number = 0;
  bool whole = false;  // a number written without decimals or exponent
  bool truth = false;
  std::chrono::year_month_day date{};
  std::vector<Node> items;  // elements of a list, or the keys of a table

  const Node* find(std::string_view wanted) const;
  // The value as a message quotes it: "12" as text, 12, a list of 3, a table.
  std::string described() const;
};

Node parse_document(std::string_view text, std::string_view file);

}  // namespace squaredig::job
