#include "formats/points_csv.h"

#include <algorithm>
#include <array>

#include "formats/csv_table.h"
#include "formats/repeated_names.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

enum GridColumn { kPoint, kEasting, kNorthing, kHeight, kCode, kSigmaPlan, kSigmaHeight };
constexpr float kNotGiven = -1;

Column needed_if(bool needed) { return needed ? Column::Needed : Column::Optional; }

std::vector<ColumnWanted> grid_columns(const SourceFile& source, const PointsWanted& wanted) {
  return {{"point"},
          {"easting", "e"},
          {"northing", "n"},
          {"height", "h", needed_if(wanted.heights == Heights::Needed)},
          {"code", "", needed_if(!source.codes.empty())},
          {"sigma_plan_mm", "", Column::Optional},
          {"sigma_height_mm", "", Column::Optional},
          {"latitude", "", Column::Foreign,
           "convert it to the grid: name it under [field] gnss and run field"}};
}

template <class Rows>
std::optional<Length> sigma(Rows& table, std::size_t column) {
  if (!table.has(column) || table.is_blank(column)) return std::nullopt;
  const auto value = table.number(column);
  if (value && *value < 0)
    table.fault(column, "a standard deviation below zero", "zero or more, in millimetres",
                "correct it or leave it blank");
  return value ? std::optional(Length::millimetres(*value)) : std::nullopt;
}

float in_mm(std::optional<Length> sigma_value) {
  return sigma_value ? static_cast<float>(sigma_value->in_millimetres()) : kNotGiven;
}

void tell_code_column(const SourceFile& source, const CsvTable& table,
                      std::vector<std::string>& cautions) {
  if (!source.codes.empty() && table.rows() == table.rows_set_aside())
    cautions.push_back(source.name + ": no row has a code that is asked for");
}

// The row's point; nothing where a number is missing.
template <class Rows>
std::optional<SurveyPoint> grid_point_of(Rows& table, const PointsWanted& wanted) {
  SurveyPoint point;
  const auto easting = table.metres(kEasting);
  const auto northing = table.metres(kNorthing);
  point.has_height =
      table.has(kHeight) && !(wanted.heights == Heights::Optional && table.is_blank(kHeight));
  const auto height = point.has_height ? table.metres(kHeight) : std::optional(0.0);
  point.sigma_plan_mm = in_mm(sigma(table, kSigmaPlan));
  point.sigma_height_mm = in_mm(sigma(table, kSigmaHeight));
  point.line = static_cast<std::uint32_t>(table.line());
  if (!easting || !northing || !height) return std::nullopt;
  point.at = grid_position(*easting, *northing, *height);
  return point;
}

struct RowRead {
  SurveyPoint point;
  std::string_view label;
  std::string_view code;
  bool aside = false;
};

struct RowsRead {
  std::vector<RowRead> rows;  // that are kept or set aside
  Extent extent;              // of all points, kept or not

  void clear() {
    rows.clear();
    extent = {};
  }
};

class PointsReading {
 public:
  PointsReading(const SourceFile& source, const PointsWanted& wanted, PointTable before)
      : source_(source),
        wanted_(wanted),
        table_(source, grid_columns(source, wanted), "a points file"),
        first_(before.size()) {
    file_.points = std::move(before);
    number_ = file_.points.add_file(source.name);
  }

  PointsFile whole_file();

 private:
  // A few for each thread, so that none waits long for the last.
  static constexpr std::size_t kStretches = 8;

  bool code_wanted(std::string_view code) const {
    const auto& codes = source_.codes;
    return codes.empty() || std::find(codes.begin(), codes.end(), code) != codes.end();
  }
  template <class Rows>
  void read_row(Rows& rows, RowsRead& read) const;
  void read_stretches();
  void take(const RowsRead& read);
  void refuse_or_tell_names();

  const SourceFile& source_;
  const PointsWanted& wanted_;
  CsvTable table_;
  PointsFile file_;
  std::size_t first_;
  std::uint16_t number_ = 0;
  std::array<RowsRead, kStretches> reads_;
};

template <class Rows>
void PointsReading::read_row(Rows& rows, RowsRead& read) const {
  RowRead row{{}, rows.text(kPoint), rows.text(kCode)};
  if (!code_wanted(row.code)) {
    row.aside = true;
    row.point.line = static_cast<std::uint32_t>(rows.line());
    read.rows.push_back(row);
    return;
  }
  if (wanted_.names == Names::Unique) rows.name(kPoint);
  const auto point = grid_point_of(rows, wanted_);
  if (!point || rows.row_has_fault()) return;
  read.extent.add(point->at.at);
  if (wanted_.keep && !wanted_.keep(point->at)) return;
  row.point = *point;
  read.rows.push_back(row);
}

void PointsReading::take(const RowsRead& read) {
  file_.extent.add(read.extent);
  for (const RowRead& row : read.rows) {
    if (row.aside) {
      table_.set_aside(static_cast<int>(row.point.line),
                       "code " + quoted(row.code) + " is not asked for");
      continue;
    }
    SurveyPoint point = row.point;
    point.file = number_;
    file_.points.add(point, row.label, row.code);
  }
}

// What lies in memory is read by all threads there are, while one of them fetches more. Behind the
// first row that has something to be told of, the rest is for the table.
void PointsReading::read_stretches() {
  auto stretches = table_.stretches(kStretches);
  if (stretches.empty()) return;
  Works works = {[&] { table_.read_ahead(); }};
  for (std::size_t i = 0; i < stretches.size(); ++i)
    works.push_back([this, &stretch = stretches[i], &read = reads_[i]] {
      // what neighbours write into one line of the cache holds both up: each works on its own
      CsvStretch own_stretch = std::move(stretch);
      RowsRead own = std::move(read);
      own.clear();
      while (own_stretch.next()) read_row(own_stretch, own);
      stretch = std::move(own_stretch);
      read = std::move(own);
    });
  source_.together(works);
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    take(reads_[i]);
    table_.go_on_behind(stretches[i]);
    if (stretches[i].row_has_fault()) return;
  }
}

void PointsReading::refuse_or_tell_names() {
  const auto repeated = repeated_names(file_.points, first_);
  if (wanted_.names == Names::Told)
    tell_repeated(repeated, source_.name, file_.cautions);
  else
    refuse_repeated(repeated, source_.name, table_.faults());
}

PointsFile PointsReading::whole_file() {
  if (!wanted_.keep && source_.codes.empty())
    file_.points.points.reserve(first_ + table_.rows_likely());
  RowsRead one;
  while (true) {
    if (source_.together) read_stretches();
    if (!table_.next()) break;
    one.clear();
    read_row(table_, one);
    take(one);
  }
  if (table_.rows() == 0 && table_.faults().empty())
    table_.faults().add({source_.name}, "a header without rows", "points", "export the file again");
  file_.cautions = table_.cautions();
  tell_code_column(source_, table_, file_.cautions);
  refuse_or_tell_names();
  file_.columns = {table_.header_place(kEasting), table_.header_place(kNorthing)};
  file_.record = table_.finish();
  return std::move(file_);
}

}  // namespace

PointsFile read_points_csv(const SourceFile& source, const PointsWanted& wanted,
                           PointTable before) {
  return PointsReading(source, wanted, std::move(before)).whole_file();
}

}  // namespace squaredig::formats
