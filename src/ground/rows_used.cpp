#include <algorithm>

#include "ground/findings_internal.h"

namespace squaredig::ground {
namespace {

using geometry::Index;

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

// The record of each file, by its first appearance: points, breaklines, outlines.
class Records {
 public:
  std::size_t of(const std::string& file) {
    for (std::size_t i = 0; i < records_.size(); ++i)
      if (records_[i].file == file) return i;
    records_.push_back({file, {}, 0, 0, {}});
    return records_.size() - 1;
  }
  InputRecord& operator[](std::size_t i) { return records_[i]; }
  std::vector<InputRecord> take() { return std::move(records_); }

 private:
  std::vector<InputRecord> records_;
};

void count(InputRecord& record, int line, const std::string& why) {
  ++record.read;
  if (why.empty())
    ++record.used;
  else
    record.set_aside.push_back({line, why});
}

std::string why_left_out(const GroundInput& input) {
  if (input.outline.empty()) return "in no triangle: at the rim, beyond longest_edge";
  return input.longest_edge ? "in no triangle: outside the outline, or beyond longest_edge"
                            : "in no triangle: outside the outline";
}

// For each row: itself where it is kept, else the row that stands in its place.
std::vector<Index> kept_rows(const Rows& rows, const BuiltGround& built) {
  std::vector<Index> kept(rows.count());
  for (std::size_t i = 0; i < kept.size(); ++i) kept[i] = static_cast<Index>(i);
  for (const geometry::Doubled& d : built.doubled) kept[at(d.dropped)] = d.kept;
  return kept;
}

}  // namespace

std::vector<InputRecord> rows_used(const Rows& rows, const GroundInput& input,
                                   const BuiltGround& built) {
  if (input.surface) return {};
  std::vector<bool> is_vertex(rows.count());
  for (const Index r : built.row)
    if (r != geometry::kNone) is_vertex[at(r)] = true;
  const std::vector<Index> kept = kept_rows(rows, built);
  const std::string left_out = why_left_out(input);
  Records records;
  std::vector<std::size_t> record_of;
  for (const std::string& file : input.points.files) record_of.push_back(records.of(file));
  if (record_of.empty() && !input.points.empty()) record_of.push_back(records.of({}));
  for (std::size_t i = 0; i < input.points.size(); ++i) {
    const SurveyPoint& point = input.points.points[i];
    std::string why;
    if (kept[i] != static_cast<Index>(i))
      why = "at the position of " + rows.name_and_place(kept[i]);
    else if (!is_vertex[i])
      why = left_out;
    count(records[record_of[point.file]], static_cast<int>(point.line), why);
  }
  // A string's vertex takes part wherever its position does, whoever gave the height; an outline's
  // does by bounding the ground.
  for (std::size_t s = 0; s < rows.string_count(); ++s) {
    const SurveyString& string = rows.string(s);
    InputRecord& record = records[records.of(string.file)];
    const bool outline = s >= input.breaklines.size();
    for (std::size_t v = 0; v < string.vertices.size(); ++v) {
      const std::size_t row = at(rows.first_row(s)) + v;
      const bool used = outline || is_vertex[at(kept[row])];
      count(record, string.vertices[v].line, used ? std::string() : left_out);
    }
  }
  return records.take();
}

}  // namespace squaredig::ground
