#include "report/record_words.h"

#include "quantity/number_text.h"
#include "report/dig_words.h"

namespace squaredig::report {
namespace {

Table inputs_of(const std::string& stage, const ResultHead& head) {
  Table table{"Inputs of " + stage,
              {words_column("file"), figures_column("read"), figures_column("used"),
               words_column("SHA-256")},
              {},
              {}};
  for (const auto& input : head.inputs)
    table.rows.push_back(
        {input.file, std::to_string(input.read), std::to_string(input.used), input.sha256});
  return table;
}

}  // namespace

Table answers_table(const record::RecordResult& record) {
  Table table{"Answers of the stages",
              {words_column("stage"), words_column("answer"), words_column("of"),
               figures_column("findings")},
              {},
              {"Of: the day of the survey where the job states it, else the day of the job. "
               "Findings need a person; they are on the sheet of their stage."}};
  for (const auto& stage : record.stages)
    table.rows.push_back({stage.stage, stage.verdict, stage.when.empty() ? "no day" : stage.when,
                          std::to_string(stage.findings)});
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

std::vector<Table> input_tables(const RecordBook& book) {
  std::vector<Table> tables;
  const auto add = [&](const char* stage, const auto* result) {
    if (result) tables.push_back(inputs_of(stage, result->head));
  };
  add("pegs", book.pegs);
  add("dig", book.dig);
  add("base", book.base);
  add("fill", book.fill);
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
