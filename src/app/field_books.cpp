#include "app/field_books.h"

#include <algorithm>
#include <cmath>

#include "app/refusals.h"
#include "app/survey_readers.h"
#include "formats/geoid_file.h"
#include "formats/gnss_csv.h"
#include "formats/levels_csv.h"
#include "formats/pairs_csv.h"
#include "formats/stations_csv.h"

namespace squaredig::app {
namespace {

using field::FieldInput;

// One book's rows, added to those of the books before it.
template <class File, class Row>
void add(FromFiles<FieldInput>& books, std::vector<Row>& to, File file,
         std::vector<Row> File::*rows) {
  std::vector<Row>& read = file.*rows;
  to.insert(to.end(), std::make_move_iterator(read.begin()), std::make_move_iterator(read.end()));
  books.records.push_back(std::move(file.record));
  books.cautions.insert(books.cautions.end(), file.cautions.begin(), file.cautions.end());
}

formats::SourceFile csv(const JobFolder& job, const job::FileSpec& spec, const char* what) {
  ending_of(spec, {".csv", ".txt"}, what);
  return job.source(spec);
}

void read_books(const JobFolder& job, FromFiles<FieldInput>& books, Refusals& refusals) {
  const job::FieldTable& table = *job.job.field;
  FieldInput& input = books.value;
  for (const auto& spec : table.stations)
    refusals.gather([&] {
      add(books, input.stations,
          formats::read_stations_csv(csv(job, spec, "a total-station book"), input.angles),
          &formats::StationsFile::shots);
    });
  for (const auto& spec : table.levels)
    refusals.gather([&] {
      add(books, input.levels, formats::read_levels_csv(csv(job, spec, "a level book")),
          &formats::LevelsFile::lines);
    });
  for (const auto& spec : table.gnss)
    refusals.gather([&] {
      add(books, input.gnss, formats::read_gnss_csv(csv(job, spec, "GNSS positions")),
          &formats::GnssFile::points);
    });
  if (table.two_peg)
    refusals.gather([&] {
      add(books, input.two_peg,
          formats::read_two_peg_csv(csv(job, *table.two_peg, "a two-peg test")),
          &formats::TwoPegFile::readings);
    });
  if (table.fit)
    refusals.gather([&] {
      input.fit.emplace();
      add(books, *input.fit, formats::read_pairs_csv(csv(job, *table.fit, "pairs of points")),
          &formats::PairsFile::pairs);
    });
}

std::optional<std::string> code_of(const std::optional<int>& epsg) {
  return epsg ? std::optional("EPSG:" + std::to_string(*epsg)) : std::nullopt;
}

void read_grid(const JobFolder& job, FromFiles<FieldInput>& books) {
  if (!job.job.grid) return;
  const job::GridTable& grid = *job.job.grid;
  books.value.crs = code_of(grid.crs);
  books.value.heights = code_of(grid.heights);
  books.value.scale_factor = grid.scale_factor;
  if (!grid.geoid) return;
  auto file = formats::read_geoid_file(job.source(*grid.geoid), grid.geoid->place);
  books.value.geoid = std::move(file.grid);
  books.records.push_back(std::move(file.record));
}

float in_mm(double variance) { return static_cast<float>(std::sqrt(variance) * 1000); }

void add_point(PointTable& table, const field::ReducedPoint& p) {
  SurveyPoint point;
  point.at = {p.at, p.height.value_or(Elevation{})};
  point.has_height = p.height.has_value();
  if (p.covariance) {
    point.sigma_plan_mm = in_mm(std::max(p.covariance->ee, p.covariance->nn));
    if (p.height) point.sigma_height_mm = in_mm(p.covariance->hh);
  }
  point.line = static_cast<std::uint32_t>(p.place.line);
  const auto at = std::find(table.files.begin(), table.files.end(), p.place.file);
  point.file = at != table.files.end() ? static_cast<std::uint16_t>(at - table.files.begin())
                                       : table.add_file(p.place.file);
  table.add(point, p.point, p.code);
}

// "A", "B2": what the pegs stage calls its corners and pegs.
bool like_a_peg(const std::string& name) {
  const auto letters = name.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
  if (letters == std::string::npos) return !name.empty() && name.size() <= 2;
  const bool numbered = name[letters] == '1' || name[letters] == '2';
  return letters >= 1 && letters <= 2 && letters + 1 == name.size() && numbered;
}

bool is_field(const job::FileSpec& spec) { return spec.path == kFieldPoints; }

bool any_is_field(const std::vector<job::FileSpec>& specs) {
  return std::any_of(specs.begin(), specs.end(), is_field);
}

}  // namespace

FromFiles<FieldInput> read_field_books(const JobFolder& job, const PointTable& control) {
  FromFiles<FieldInput> books{job.job.field->settings};
  books.value.control = control;
  Refusals refusals;
  read_books(job, books, refusals);
  refusals.gather([&] { read_grid(job, books); });
  refusals.throw_if_any();
  return books;
}

std::shared_ptr<const ReducedField> reduced_points(const FromFiles<FieldInput>& books) {
  auto reduced = std::make_shared<ReducedField>();
  reduced->result = field::reduce(books.value, {});
  const field::FieldResult& result = reduced->result;
  reduced->points.records = books.records;
  reduced->points.cautions = books.cautions;
  reduced->points.assumed = books.assumed;
  const auto say = [](auto& to, const std::vector<std::string>& lines) {
    for (const std::string& line : lines) to.push_back("field: " + line);
  };
  say(reduced->points.assumed, result.head.assumed);
  say(reduced->points.cautions, result.head.cautions);
  for (const Finding& finding : result.head.findings)
    reduced->points.cautions.push_back("field: " + finding.text);
  for (const field::ReducedPoint& p : result.points) add_point(reduced->points.value, p);
  return reduced;
}

FromFiles<PointTable> points_of(const ReducedField& field, const PointsAsked& asked,
                                PointTable before) {
  FromFiles<PointTable> taken = field.points;
  taken.value = std::move(before);
  std::size_t without_height = 0;
  for (const field::ReducedPoint& p : field.result.points) {
    const bool coded = asked.codes.empty() || std::find(asked.codes.begin(), asked.codes.end(),
                                                        p.code) != asked.codes.end();
    const bool named = asked.names == formats::Names::Told || like_a_peg(p.point);
    if (!coded || !named) continue;
    if (!p.height && asked.heights == formats::Heights::Needed)
      ++without_height;
    else
      add_point(taken.value, p);
  }
  if (without_height > 0)
    taken.cautions.push_back("field: " + std::to_string(without_height) +
                             " reduced points have no height and take no part here");
  return taken;
}

bool asks_for_field(const job::Job& job, const std::set<job::Stage>& stages) {
  using job::Stage;
  if (!job.field) return false;
  const bool later =
      std::any_of(stages.begin(), stages.end(), [](Stage s) { return s != Stage::Field; });
  if (later && job.ground && any_is_field(job.ground->points)) return true;
  if (stages.contains(Stage::Pegs) && job.pegs && job.pegs->as_set && is_field(*job.pegs->as_set))
    return true;
  if (stages.contains(Stage::Base) && job.base &&
      (any_is_field(job.base->points) || any_is_field(job.base->after_repair) ||
       any_is_field(job.base->bedding_points)))
    return true;
  return stages.contains(Stage::Dig) &&
         std::any_of(job.progress.begin(), job.progress.end(),
                     [](const job::NamedSurvey& s) { return is_field(s.points); });
}

}  // namespace squaredig::app
