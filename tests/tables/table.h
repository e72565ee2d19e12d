// Reading a table of cases that a surveyor wrote, one case a line:
//
//   WHAT: name value unit, name value unit -> name value unit, ...     # remark
//
// Left of the arrow stands what is given, right of it what must come out. A number right of the
// arrow is met when the computed one agrees with it to half its last digit: 87.79 m means 87.785
// to 87.795. A line with words that nobody asks for is not run but refused.
#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "quantity/angle.h"
#include "quantity/slope.h"

namespace squaredig::tables {

class UnknownWords : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

// The number a text is; UnknownWords where it is none.
double number(const std::string& text);

// One line of the form above, taken apart as a runner asks for its items by name.
class Line {
 public:
  explicit Line(const std::string& text);
  const std::string& what() const { return what_; }

  // A given number in its unit, "" for a plain ratio or count; `value` insists that it is there.
  bool has(const std::string& name) const;
  double value(const std::string& name, const std::string& unit);
  double value_or(const std::string& name, const std::string& unit, double otherwise);
  Batter batter(const std::string& name);  // "1.5:1"
  Angle angle(const std::string& name);    // "45 26 30", degrees minutes seconds

  // Compares where the line asks for this name; what is wrong is kept.
  void answer(const std::string& name, double computed, const std::string& unit);
  void answer(const std::string& name, const std::string& words);

  // What is wrong; UnknownWords where an item was never asked for.
  std::string faults() const;

 private:
  struct Item {
    std::string text;
    bool taken = false;
  };
  std::string rest(std::vector<Item>& items, const std::string& name);
  std::string what_, text_, wrong_;
  std::vector<Item> given_, wanted_;
};

// Runs every line of the file named on the command line; `faults_of` says what is wrong with one,
// nothing where all is well. Gives the exit status: 0, 1 where a line fails or the table has none,
// 2 where a line has words that are not known.
int run(int argc, char** argv, const std::function<std::string(const std::string&)>& faults_of);
int run_lines(int argc, char** argv, const std::function<void(Line&)>& work);

}  // namespace squaredig::tables
