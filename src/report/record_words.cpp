#include "report/record_words.h"

#include <algorithm>

#include "quantity/number_text.h"
#include "report/dig_words.h"
#include "report/plan_marks_internal.h"

namespace squaredig::report {
namespace {

std::string unit_text(const std::string& unit) {
  if (unit == "percent") return " %";
  if (unit.starts_with("m3")) return " m\xC2\xB3" + unit.substr(2);
  if (unit.starts_with("m2")) return " m\xC2\xB2" + unit.substr(2);
  return unit.empty() ? "" : " " + unit;
}

}  // namespace

Table answers_table(const record::RecordResult& record) {
  Table table{"Answers of the stages",
              {words_column("stage"), words_column("answer"), words_column("of"),
               words_column("which is the"), figures_column("findings")},
              {},
              {"Findings need a person; they stand in the chapter of their stage. The files each "
               "answer came from stand at the end of the book."}};
  for (const auto& stage : record.stages)
    table.rows.push_back({stage.stage, stage.verdict, stage.when.empty() ? "no day" : stage.when,
                          stage.when_is, std::to_string(stage.findings)});
  return table;
}

Table figures_table(const std::string& title, const std::vector<record::Figure>& figures) {
  Table table{title,
              {words_column("what"), figures_column("value"), figures_column("limit"),
               words_column("answer")},
              {},
              {}};
  for (const auto& figure : figures) {
    const auto text = [&](double value) {
      return fixed(value, figure.decimals) + unit_text(figure.unit);
    };
    table.rows.push_back(
        {figure.what, text(figure.value), figure.limit ? text(*figure.limit) : "", figure.verdict});
  }
  const bool judged = std::any_of(figures.begin(), figures.end(), [](const auto& figure) {
    return figure.limit || !figure.verdict.empty();
  });
  if (judged) return table;
  table.columns.resize(2);  // nothing was measured against anything
  for (auto& row : table.rows) row.resize(2);
  return table;
}

Table tank_table(const record::RecordResult& record) {
  Table table{"Corners of the tank at its underside",
              {words_column("corner"), figures_column("easting"), figures_column("northing"),
               figures_column("height")},
              {},
              {}};
  if (record.tank_built) {
    for (const char* name : {"built: easting", "northing", "height"})
      table.columns.push_back(figures_column(name));
    table.notes = {
        "Built: re-made from the pegs as set where they were measured, on the base as "
        "surveyed."};
  }
  for (std::size_t i = 0; i < record.tank_designed.size(); ++i) {
    const auto add = [&](const GridPosition& p) {
      for (const auto& text : {easting_text(p.at), northing_text(p.at), level_text(p.height)})
        table.rows.back().push_back(text);
    };
    table.rows.push_back({corner_letter(i)});
    add(record.tank_designed[i]);
    if (record.tank_built) add((*record.tank_built)[i]);
  }
  return table;
}

Table level_table(const dig::DigResult& dig) {
  Table table{"Levels at the tank's corners", {words_column("corner")}, {}, {}};
  for (const auto& name : ladder_names()) table.columns.push_back(figures_column(name));
  for (const auto& line : ladder_lines(dig)) {
    table.rows.push_back({line.corner});
    for (const auto& level : line.levels) table.rows.back().push_back(level);
  }
  return table;
}

std::vector<Row> storage_rows(const record::Storage& storage) {
  std::vector<Row> rows{{"whole space of the tank", volume_text(storage.gross)}};
  if (storage.net) rows.push_back({"voids of the tank", volume_text(*storage.net)});
  if (storage.outlet) rows.push_back({"outlet", level_text(storage.outlet)});
  if (storage.below_outlet)
    rows.push_back({"below the outlet", volume_text(*storage.below_outlet)});
  return rows;
}

Table storage_table(const record::Storage& storage) {
  Table table{"Level and storage",
              {figures_column("level"), figures_column("whole space, m\xC2\xB3"),
               figures_column("voids, m\xC2\xB3")},
              {},
              {"On " + storage.stands_on + "."}};
  const auto m3 = [](Volume v) { return fixed(v.in_cubic_metres(), 2); };
  for (const auto& row : storage.table)
    table.rows.push_back({level_text(row.level), m3(row.gross), row.net ? m3(*row.net) : ""});
  return table;
}

std::vector<Table> input_tables(const record::RecordResult& record) {
  std::vector<Table> tables;
  for (const auto& stage : record.stages) {
    tables.push_back({"Inputs of " + stage.stage + ", " + stage.verdict,
                      {words_column("file"), words_column("SHA-256")},
                      {},
                      {}});
    for (const auto& input : stage.inputs) tables.back().rows.push_back({input.file, input.sha256});
  }
  return tables;
}

std::string missing_chapters(const RecordBook& book) {
  std::string missing;
  const auto ask = [&](const char* chapter, const void* result) {
    if (!result) missing += (missing.empty() ? "" : ", ") + std::string(chapter);
  };
  ask("set out", book.pegs);
  ask("dug", book.dig);
  ask("verified", book.base);
  ask("filled", book.fill);
  return missing.empty() ? "" : "Not in this book, as the job does not name it: " + missing + ".";
}

}  // namespace squaredig::report
