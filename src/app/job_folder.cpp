#include "app/job_folder.h"

#include "app/crs_ways.h"
#include "app/parallel.h"
#include "formats/input_file.h"
#include "quantity/number_text.h"

namespace squaredig::app {
namespace {

namespace fs = std::filesystem;

std::optional<formats::LengthUnit> unit_of(const std::optional<job::FileUnits>& units) {
  if (!units) return std::nullopt;
  if (units == job::FileUnits::Feet) return formats::LengthUnit::Foot;
  if (units == job::FileUnits::UsSurveyFeet) return formats::LengthUnit::UsSurveyFoot;
  return formats::LengthUnit::Metre;
}

std::vector<std::string> split_at_commas(std::string_view text) {
  std::vector<std::string> parts;
  while (true) {
    const auto comma = text.find(',');
    parts.emplace_back(trimmed(text.substr(0, comma)));
    if (comma == std::string_view::npos) return parts;
    text.remove_prefix(comma + 1);
  }
}

}  // namespace

formats::SourceFile JobFolder::source(const job::FileSpec& spec) const {
  formats::SourceFile source;
  source.path = (folder / spec.path).string();
  source.name = spec.path;
  if (spec.columns) source.columns = split_at_commas(*spec.columns);
  source.unit = unit_of(spec.units);
  source.meter = meter;
  if (threads > 1) source.together = together(threads);
  source.layer = spec.layer;
  source.surface = spec.name;
  if (job.grid)
    source.grid = formats::GridWanted{job.grid->crs.value_or(0), job.grid->heights.value_or(0),
                                      crs_ways(job)};
  return source;
}

InputRecord JobFolder::record() const {
  InputRecord record;
  record.file = file.filename().string();
  record.sha256 = sha256;
  return record;
}

fs::path JobFolder::out(const std::optional<fs::path>& given) const {
  return given ? *given : folder / job.job.out;
}

JobFolder open_job(const fs::path& target, unsigned threads) {
  JobFolder found;
  found.threads = thread_count(threads);
  std::error_code error;
  found.file = fs::is_directory(target, error) ? target / "job.toml" : target;
  found.folder = found.file.has_parent_path() ? found.file.parent_path() : fs::path(".");
  const std::string name = found.file.filename().string();
  const std::string text = formats::read_whole({found.file.string(), found.file.string()});
  found.sha256 = formats::sha256_of(text);
  found.job = job::read_job(text, name);
  return found;
}

}  // namespace squaredig::app
