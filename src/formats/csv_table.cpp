#include "formats/csv_table.h"

#include <algorithm>

#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kSetAsideListed = 1000;

std::string lower(std::string_view text) {
  std::string low(text);
  for (char& c : low)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return low;
}

// The names of a header line, roughly: good enough to tell separators apart.
std::vector<std::string> rough_names(std::string_view line, char separator) {
  std::vector<std::string> names;
  while (true) {
    const auto end = line.find(separator);
    std::string name = lower(line.substr(0, end));
    std::erase_if(name, [](char c) { return c == ' ' || c == '"' || c == '\t'; });
    names.push_back(std::move(name));
    if (end == std::string_view::npos) return names;
    line.remove_prefix(end + 1);
  }
}

bool ambiguous(const std::string& name) { return name == "x" || name == "y" || name == "z"; }

std::string list_of(const std::vector<std::string>& names) {
  std::string list;
  for (const auto& name : names) list += (list.empty() ? "" : ", ") + name;
  return list;
}

std::string needed_names(const std::vector<ColumnWanted>& wanted) {
  std::vector<std::string> names;
  for (const auto& column : wanted)
    if (column.need == Column::Needed) names.push_back(column.name);
  return list_of(names);
}

}  // namespace

CsvTable::CsvTable(const SourceFile& source, std::vector<ColumnWanted> wanted, std::string what)
    : what_(std::move(what)),
      source_(source),
      rows_in_(source_, faults_),
      wanted_(std::move(wanted)),
      header_places_(wanted_.size()) {
  record_.file = source.name;
  columns_.position.assign(wanted_.size(), -1);
  columns_.unit = source_.unit;
  const auto line = rows_in_.first_line();
  if (!line) {
    faults_.add({source_.name}, "no content", what_ + " with a header and rows", "export it again");
    faults_.throw_if_any();
  }
  columns_.separator = best_separator(*line);
  rows_in_.cut_at(columns_.separator);
  if (!source_.columns.empty()) {
    std::vector<std::string> names;
    for (const auto& name : source_.columns) names.push_back(lower(trimmed(name)));
    take_names(names, std::vector<Place>(names.size(), Place{source_.name}));
  } else if (const CsvRow* row = rows_in_.next()) {
    take_header(*row);
  } else if (faults_.empty()) {
    faults_.add({source_.name}, "no header row", "a header with " + needed_names(wanted_),
                "export the file again");
  }
  faults_.throw_if_any();
}

std::optional<std::size_t> CsvTable::column_of(const std::string& name) const {
  for (std::size_t i = 0; i < wanted_.size(); ++i)
    if (!name.empty() && (wanted_[i].name == name || wanted_[i].also == name)) return i;
  return std::nullopt;
}

// The separator that yields most names, or with stated columns their number; comma where none does.
char CsvTable::best_separator(std::string_view line) const {
  char best = ',';
  std::size_t most = 0;
  for (const char separator : {'\t', ';', ','}) {
    const auto names = rough_names(line, separator);
    std::size_t hits = 0;
    if (!source_.columns.empty())
      hits = names.size() == source_.columns.size() ? 1 : 0;
    else
      for (const auto& name : names) hits += column_of(name) || ambiguous(name) ? 1U : 0U;
    if (hits > most) {
      most = hits;
      best = separator;
    }
  }
  return best;
}

void CsvTable::take_header(const CsvRow& row) {
  std::vector<std::string> names;
  std::vector<Place> places;
  for (const CsvCell& cell : row.cells) {
    names.push_back(lower(trimmed(cell.text)));
    places.push_back(rows_in_.place(row, cell));
  }
  const auto known = [this](const std::string& name) { return column_of(name) || ambiguous(name); };
  const auto numeric = [](const std::string& name) { return parse_number(name).has_value(); };
  if (std::none_of(names.begin(), names.end(), known) &&
      std::any_of(names.begin(), names.end(), numeric)) {
    faults_.add({source_.name, row.line, 1}, "no header row",
                "a header with " + needed_names(wanted_),
                "add the header, or state the order in the job: columns = \"...\"");
    return;
  }
  take_names(names, places);
}

void CsvTable::take_names(const std::vector<std::string>& names, const std::vector<Place>& places) {
  columns_.width = names.size();
  std::vector<std::string> unused;
  bool any_ambiguous = false;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const auto column = column_of(names[i]);
    any_ambiguous = any_ambiguous || ambiguous(names[i]);
    if (ambiguous(names[i]))
      faults_.add(places[i],
                  "column " + quoted(names[i]) + ": the order of x, y and z is ambiguous",
                  "easting, northing and height by name", "rename the column after what it holds");
    else if (column && columns_.position[*column] >= 0)
      faults_.add(places[i], "a second column for " + wanted_[*column].name, "one column for it",
                  "take out or rename one of the two");
    else if (!column || wanted_[*column].need == Column::Foreign)
      unused.push_back(quoted(names[i]));
    else
      header_places_[*column] = places[i];
    if (column && columns_.position[*column] < 0) columns_.position[*column] = static_cast<int>(i);
  }
  if (!any_ambiguous) miss_columns(places.empty() ? 1 : places.front().line);
  std::erase(unused, quoted(""));
  if (!unused.empty())
    cautions_.push_back(source_.name + ": not used: column" + (unused.size() == 1 ? " " : "s ") +
                        list_of(unused));
}

// Faults for the columns that are needed and not there; one alone where the file is of another
// kind.
void CsvTable::miss_columns(int line) {
  std::vector<std::string> missing;
  const ColumnWanted* foreign = nullptr;
  for (std::size_t i = 0; i < wanted_.size(); ++i) {
    const bool there = columns_.position[i] >= 0;
    if (wanted_[i].need == Column::Needed && !there) missing.push_back(wanted_[i].name);
    if (wanted_[i].need == Column::Foreign && there && foreign == nullptr) foreign = &wanted_[i];
  }
  const std::string needed = what_ + " with " + needed_names(wanted_);
  if (foreign != nullptr && !missing.empty()) {
    faults_.add({source_.name, line, 1}, "a column " + foreign->name + " and no " + missing.front(),
                needed, foreign->remedy);
    return;
  }
  for (const std::string& name : missing)
    faults_.add({source_.name, line, 1}, "no column " + name, needed,
                "add the column, or name it so in the header");
}

bool CsvTable::next() {
  while ((row_ = rows_in_.next()) != nullptr) {
    ++rows_;
    row_has_fault_ = row_is_header_ = false;
    const std::size_t cells = row_->cells.size();
    if (cells == columns_.width) return true;
    const bool is_short = cells < columns_.width;
    faults_.add(
        is_short ? rows_in_.end_place(*row_) : rows_in_.place(*row_, row_->cells[columns_.width]),
        std::string("a ") + (is_short ? "short" : "long") + " row of " + std::to_string(cells) +
            (cells == 1 ? " cell" : " cells"),
        std::to_string(columns_.width) + " cells as the " +
            (source_.columns.empty() ? "header has" : "stated columns have"),
        is_short ? "fill in what is missing" : "quote the cell that holds a separator");
  }
  return false;
}

std::string_view CsvTable::name(std::size_t column) {
  const std::string_view found = text(column);
  if (found.empty())
    fault(column, "no name in column " + wanted_[column].name, "a name",
          "fill it in or take out the row");
  return found;
}

std::optional<double> CsvTable::number(std::size_t column) {
  const std::string_view cell = text(column);
  auto value = parse_number(cell);
  if (value && (columns_.separator == ',' || columns_.decimal_mark == '.')) return value;
  const auto mark = cell.find_first_of(".,");
  if (!value) value = number_with_comma(cell, columns_.separator);
  if (!value) {
    number_fault(column);
    return std::nullopt;
  }
  if (mark == std::string_view::npos || cell[mark] == columns_.decimal_mark) return value;
  if (columns_.decimal_mark != 0) {
    mixed_marks_fault(column);
    return std::nullopt;
  }
  columns_.decimal_mark = cell[mark];
  decimal_place_ = place(column);
  return value;
}

void CsvTable::mixed_marks_fault(std::size_t column) {
  const bool point_before = columns_.decimal_mark == '.';
  fault(column,
        std::string("a decimal ") + (point_before ? "comma" : "point") + " in " +
            quoted(text(column)),
        std::string("a decimal ") + (point_before ? "point" : "comma") + " as in line " +
            std::to_string(decimal_place_.line),
        "write all numbers of the file alike");
}

Place CsvTable::place(std::size_t column) const {
  const int position = columns_.position[column];
  if (position < 0) return {source_.name, row_->line, 1};
  return rows_in_.place(*row_, row_->cells[static_cast<std::size_t>(position)]);
}

void CsvTable::number_fault(std::size_t column) {
  if (row_is_header_) return;
  const std::string_view cell = text(column);
  if (column_of(lower(cell))) {
    row_is_header_ = row_has_fault_ = true;
    const bool stated = !source_.columns.empty();
    faults_.add({source_.name, row_->line, 1}, stated ? "a header row" : "the header again",
                stated ? "rows alone, as the job states the columns" : "one header, at the top",
                stated ? "take this line out, or take columns out of the job"
                       : "take this line out, or split the file");
    return;
  }
  const std::string what =
      wanted_[column].name + (cell.empty() ? "" : " " + quoted(cell)) + of_row();
  if (cell.empty())
    fault(column, "no " + what, "a number", "fill it in or take out the row");
  else if (columns_.separator == ',' && cell.find(',') != std::string_view::npos)
    fault(column, what + " has a comma", "a number with a decimal point",
          "write a point, or separate the cells by semicolons or tabs");
  else
    fault(column, what + " is not a number", "a number such as 102.350",
          "correct it or take out the row");
}

// " of point FL12", where the row has such a name.
std::string CsvTable::of_row() const {
  const std::string_view name = text(0);
  return name.empty() ? "" : " of " + wanted_[0].name + " " + quoted(name);
}

void CsvTable::fault(std::size_t column, std::string found, std::string needed,
                     std::string remedy) {
  row_has_fault_ = true;
  faults_.add(place(column), std::move(found), std::move(needed), std::move(remedy));
}

void CsvTable::set_aside(int line, std::string why) {
  if (++set_aside_ <= kSetAsideListed)
    record_.set_aside.push_back({line, std::move(why)});
  else if (set_aside_ == kSetAsideListed + 1)
    record_.set_aside.push_back({line, ""});
}

std::vector<CsvStretch> CsvTable::stretches(std::size_t most) {
  std::vector<CsvStretch> stretches;
  for (const CsvLines& lines : rows_in_.stretches(most)) stretches.emplace_back(columns_, lines);
  return stretches;
}

void CsvTable::go_on_behind(const CsvStretch& stretch) {
  rows_ += stretch.rows();
  rows_in_.go_on_at(stretch.rest(), stretch.rest_line());
}

InputRecord CsvTable::finish() {
  faults_.throw_if_any();
  if (set_aside_ > kSetAsideListed)
    record_.set_aside.back().why = std::to_string(set_aside_ - kSetAsideListed) +
                                   " rows from here on that are not listed one by one";
  record_.sha256 = rows_in_.sha256();
  record_.read = rows_;
  record_.used = rows_ - set_aside_;
  return std::move(record_);
}

}  // namespace squaredig::formats
