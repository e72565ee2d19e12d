#include "formats/strings_csv.h"

#include <algorithm>
#include <unordered_map>

#include "formats/csv_table.h"

namespace squaredig::formats {
namespace {

enum StringColumn { kString, kEasting, kNorthing, kHeight, kCode };

std::vector<ColumnWanted> string_columns(const SourceFile& source, Heights heights) {
  return {{"string"},
          {"easting", "e"},
          {"northing", "n"},
          {"height", "h", heights == Heights::Needed ? Column::Needed : Column::Optional},
          {"code", "", source.codes.empty() ? Column::Optional : Column::Needed}};
}

std::optional<StringVertex> vertex_of(CsvTable& table, Heights heights) {
  StringVertex vertex;
  const auto easting = table.metres(kEasting);
  const auto northing = table.metres(kNorthing);
  vertex.has_height =
      table.has(kHeight) && !(heights == Heights::Optional && table.is_blank(kHeight));
  const auto height = vertex.has_height ? table.metres(kHeight) : std::optional(0.0);
  vertex.line = table.line();
  if (!easting || !northing || !height) return std::nullopt;
  vertex.at = grid_position(*easting, *northing, *height);
  return vertex;
}

void refuse_single_vertices(const std::vector<SurveyString>& strings, FaultList& faults) {
  for (const SurveyString& string : strings)
    if (string.vertices.size() == 1)
      faults.add({string.file, string.vertices.front().line, 1},
                 "string " + quoted(string.name) + " has a single vertex", "two vertices or more",
                 "add the others or take it out");
}

bool code_wanted(const SourceFile& source, CsvTable& table) {
  const auto& codes = source.codes;
  return codes.empty() || std::find(codes.begin(), codes.end(), table.text(kCode)) != codes.end();
}

}  // namespace

StringsFile read_strings_csv(const SourceFile& source, Heights heights) {
  CsvTable table(source, string_columns(source, heights), "a strings file");
  StringsFile file;
  std::unordered_map<std::string, std::size_t> by_name;
  while (table.next()) {
    if (!code_wanted(source, table)) {
      table.set_aside(table.line(), "code " + quoted(table.text(kCode)) + " is not asked for");
      continue;
    }
    const std::string name(table.name(kString));
    const auto vertex = vertex_of(table, heights);
    if (!vertex || table.row_has_fault()) continue;
    const auto [at, fresh] = by_name.try_emplace(name, file.strings.size());
    if (fresh) file.strings.push_back({name, source.name, {}});
    file.strings[at->second].vertices.push_back(*vertex);
    file.extent.add(vertex->at.at);
  }
  if (table.rows() == 0 && table.faults().empty())
    table.faults().add({source.name}, "a header without rows", "strings", "export the file again");
  if (table.faults().empty()) refuse_single_vertices(file.strings, table.faults());
  file.cautions = table.cautions();
  file.columns = {table.header_place(kEasting), table.header_place(kNorthing)};
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
