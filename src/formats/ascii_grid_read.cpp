#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "formats/raster_internal.h"
#include "formats/raster_read.h"
#include "formats/text_buffer.h"
#include "quantity/number_text.h"

namespace squaredig::formats {

void CellIntake::no_data(const Place& place) {
  intake_.set_aside(place.line, "the cell has no data");
}

void CellIntake::height(double east, double north, double up, const Place& place) {
  constexpr double kDeepest = -12000, kHighest = 9000;  // no ground lies beyond these
  if (!impossible_ && (up < kDeepest || up > kHighest || up == -9999)) {
    impossible_ = place;
    impossible_height_ = up;
  }
  intake_.take({east, north, up, {}, {}, place});
}

void CellIntake::finish(bool no_data_stated) {
  if (impossible_ && !no_data_stated)
    intake_.faults().add(*impossible_,
                         "a height of " + shortest(impossible_height_) +
                             " and no value stated for cells without data",
                         "the value that means no data", "state it in the raster");
}

namespace {

constexpr std::size_t kLongestWord = 64;

struct Word {
  std::string_view text;
  int line;
  int column;
};

// The words of a text file, one after the other.
class Words {
 public:
  Words(const SourceFile& source, FaultList& faults)
      : text_(source), name_(source.name), faults_(faults) {}

  std::optional<Word> next() {
    while (!broken_) {
      const std::string_view rest = text_.rest();
      std::size_t begin = 0;
      while (begin < rest.size() && blank(rest[begin])) step(rest[begin++]);
      std::size_t end = begin;
      while (end < rest.size() && !blank(rest[end])) ++end;
      if (end == rest.size() && !text_.ended() && end - begin <= kLongestWord) {
        text_.take(begin);
        text_.more();
        continue;
      }
      const Word word{rest.substr(begin, end - begin), line_, column()};
      if (word.text.size() > kLongestWord) {
        broken_ = true;
        faults_.add(here(), "a word of more than 64 letters: " + quoted(word.text),
                    "numbers separated by blanks", "export it again");
        return std::nullopt;
      }
      text_.take(end);
      if (word.text.empty()) return std::nullopt;
      column_ += static_cast<std::int64_t>(word.text.size());
      return word;
    }
    return std::nullopt;
  }
  Place place(const Word& word) const { return {name_, word.line, word.column}; }
  Place here() const { return {name_, line_, column()}; }
  std::string sha256() { return text_.sha256(); }

 private:
  int column() const { return static_cast<int>(std::min<std::int64_t>(column_, INT32_MAX)); }
  static bool blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }
  void step(char c) {
    ++column_;
    if (c != '\n') return;
    ++line_;
    column_ = 1;
  }

  TextBuffer text_;
  std::string name_;
  FaultList& faults_;
  bool broken_ = false;
  int line_ = 1;
  std::int64_t column_ = 1;
};

struct GridHeader {
  double columns = 0, rows = 0, cell_east = 0, cell_north = 0;
  double west = 0, south = 0;  // of the centre of the lower left cell
  std::optional<double> no_data;
};

std::string lower(std::string_view text) {
  std::string low(text);
  for (char& c : low)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return low;
}

class GridReading {
 public:
  GridReading(const SourceFile& source, PointIntake& intake)
      : intake_(intake), name_(source.name), words_(source, intake.faults()) {}

  std::string read() {
    read_header();
    intake_.faults().throw_if_any();
    const GridHeader header = checked();
    intake_.faults().throw_if_any();
    StatedCrs nothing;
    nothing.place = {name_};
    intake_.place_by(nothing);
    read_cells(header);
    return words_.sha256();
  }

 private:
  // Keys with their numbers, up to the first word that is a number where a key could stand.
  void read_header() {
    for (first_ = words_.next(); first_ && !parse_number(first_->text); first_ = words_.next()) {
      const Place place = words_.place(*first_);
      const std::string key = lower(first_->text);
      const auto value = words_.next();
      if (!known(key)) {
        intake_.faults().add(place, quoted(key) + " in the header",
                             "ncols, nrows, xllcorner or xllcenter, yllcorner or yllcenter, "
                             "cellsize or dx and dy, nodata_value",
                             "export the grid again");
        return;
      }
      const auto number = value ? parse_number(value->text) : std::nullopt;
      if (!number)
        intake_.faults().add(place, key + " without a number", key + " and its number",
                             "export the grid again");
      else if (!values_.emplace(key, *number).second)
        intake_.faults().add(place, key + " twice", "each key once", "export the grid again");
      if (!number) return;
    }
  }

  static bool known(const std::string& key) {
    constexpr std::array<std::string_view, 10> kKeys = {
        "ncols",     "nrows",    "xllcorner", "yllcorner", "xllcenter",
        "yllcenter", "cellsize", "dx",        "dy",        "nodata_value"};
    return std::find(kKeys.begin(), kKeys.end(), key) != kKeys.end();
  }

  std::optional<double> value(const std::string& key) const {
    const auto found = values_.find(key);
    return found == values_.end() ? std::nullopt : std::optional(found->second);
  }

  void missing(const std::string& what) {
    intake_.faults().add({name_}, "no " + what + " in the header", "an ASCII grid with its header",
                         "export the grid again");
  }

  double centre(const std::string& axis, double cell) {
    if (const auto at = value(axis + "llcenter")) return *at;
    if (const auto at = value(axis + "llcorner")) return *at + cell / 2;
    missing(axis + "llcorner");
    return 0;
  }

  GridHeader checked() {
    GridHeader header;
    const auto size = [&](const std::string& key) {
      const auto found = value(key);
      if (!found) missing(key);
      if (found && !(*found >= 1 && *found == std::floor(*found)))
        intake_.faults().add({name_}, key + " " + shortest(*found), "a whole number above 0",
                             "export the grid again");
      return found.value_or(1);
    };
    header.columns = size("ncols");
    header.rows = size("nrows");
    if (header.columns * header.rows > kMostCells)
      intake_.faults().add({name_}, shortest(header.columns * header.rows) + " cells",
                           "1e9 cells at most", "export a smaller area");
    const auto square = value("cellsize");
    header.cell_east = square.value_or(value("dx").value_or(0));
    header.cell_north = square.value_or(value("dy").value_or(0));
    if (!square && !value("dx"))
      missing("cellsize");
    else if (!(header.cell_east > 0) || !(header.cell_north > 0))
      intake_.faults().add({name_}, "a cell size that is not above 0", "a size above 0",
                           "export the grid again");
    header.west = centre("x", header.cell_east);
    header.south = centre("y", header.cell_north);
    header.no_data = value("nodata_value");
    return header;
  }

  void read_cells(const GridHeader& header) {
    CellIntake cells(intake_);
    const auto columns = static_cast<std::int64_t>(header.columns);
    const auto all = columns * static_cast<std::int64_t>(header.rows);
    for (std::int64_t i = 0; i < all; ++i) {
      const auto word = i == 0 ? first_ : words_.next();
      if (!word) {
        intake_.faults().add(words_.here(), "the file ends after " + std::to_string(i) + " cells",
                             std::to_string(all) + " cells, ncols times nrows",
                             "export the grid again");
        return;
      }
      const auto number = parse_number(word->text);
      const Place place = words_.place(*word);
      if (!number) {
        intake_.faults().add(place, quoted(word->text) + " is not a number",
                             "a number with a decimal point", "export the grid again");
        continue;
      }
      const std::int64_t rows_before = i / columns;
      const auto column = static_cast<double>(i % columns);
      const auto row = static_cast<double>(rows_before);
      const double east = header.west + column * header.cell_east;
      const double north = header.south + (header.rows - 1 - row) * header.cell_north;
      if (header.no_data && *number == *header.no_data)
        cells.no_data(place);
      else
        cells.height(east, north, *number, place);
    }
    if (const auto more = words_.next())
      intake_.faults().add(words_.place(*more), "more than " + std::to_string(all) + " cells",
                           "ncols times nrows cells", "export the grid again");
    cells.finish(header.no_data.has_value());
  }

  PointIntake& intake_;
  std::string name_;
  Words words_;
  std::optional<Word> first_;
  std::map<std::string, double> values_;
};

}  // namespace

PointsFile read_ascii_grid_points(const SourceFile& source, const PointsWanted& wanted,
                                  PointTable before) {
  PointIntake intake(source, wanted, std::move(before));
  std::string sha256 = GridReading(source, intake).read();
  return intake.finish(std::move(sha256));
}

}  // namespace squaredig::formats
