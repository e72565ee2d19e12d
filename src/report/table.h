// A table as values, shown on paper and on a page alike.
#pragma once

#include <string>
#include <vector>

#include "report/canvas.h"

namespace squaredig::report {

struct Column {
  std::string heading;
  Anchor anchor = Anchor::Right;
};

struct Table {
  std::string title;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> notes;  // below it
};

}  // namespace squaredig::report
