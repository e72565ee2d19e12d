// [field]
#include "job/files.h"
#include "job/tables.h"

namespace squaredig::job {
namespace {

Rule<Angle> seconds() { return made<Angle>(number("seconds of arc", {0, 3600}), Angle::seconds); }

// "EPSG:" and a number; what it stands for is asked of the register when positions are projected.
Rule<std::string> epsg_code() {
  const std::string words = "a reference system as \"EPSG:\" and its number";
  return {words, [=](const Node& node, Faults& faults) -> std::optional<std::string> {
            const bool shaped = node.kind == Node::Kind::Text && node.text.starts_with("EPSG:") &&
                                node.text.size() > 5 && node.text.size() <= 12 &&
                                node.text.find_first_not_of("0123456789", 5) == std::string::npos;
            if (shaped) return node.text;
            faults.wrong_value(node, words, "write such as \"EPSG:4258\"");
            return std::nullopt;
          }};
}

Rule<Ratio> parts_per_million() {
  return made<Ratio>(number("millimetres per kilometre", {0, 10000}),
                     [](double ppm) { return Ratio::of(ppm / 1e6); });
}

}  // namespace

void read_field(TableReader& root, Job& job) {
  const Node* node = root.table("field");
  if (!node) return;
  TableReader table(*node, root.faults());
  FieldTable field;
  auto& settings = field.settings;
  settings.place = table.place();
  field.stations = table.may("stations", files()).value_or(std::vector<FileSpec>{});
  field.levels = table.may("levels", files()).value_or(std::vector<FileSpec>{});
  field.gnss = table.may("gnss", files()).value_or(std::vector<FileSpec>{});
  field.two_peg = table.may("two_peg", file());
  field.fit = table.may("fit", file());
  settings.angles =
      table
          .may("angles", one_of<AngleNotation>({{"dms", AngleNotation::DegreesMinutesSeconds},
                                                {"deg", AngleNotation::DecimalDegrees},
                                                {"gon", AngleNotation::Gon}}))
          .value_or(AngleNotation::DegreesMinutesSeconds);
  const bool shots = table.has("stations");
  settings.sigma_direction = table.need_if(shots, "sigma_direction_sec", seconds());
  settings.sigma_zenith = table.need_if(shots, "sigma_zenith_sec", seconds());
  settings.sigma_distance = table.need_if(shots, "sigma_distance_mm", millimetres(kSigma));
  settings.sigma_distance_per_length =
      table.need_if(shots, "sigma_distance_ppm", parts_per_million());
  settings.sigma_level = table.may("sigma_level_mm", millimetres({0, 1000, Ends::Above}));
  settings.level_misclosure = table.may("level_misclosure_mm", millimetres({0, 1000, Ends::Above}));
  settings.refraction = table.may("refraction", ratio("a coefficient of refraction", {-10, 10}));
  settings.gnss_crs = table.may("gnss_crs", epsg_code());
  settings.gnss_year = table.may("gnss_year", number("a year", {1980, 2100}));
  table.finish();
  if (shots && !table.has("angles"))
    job.assumed.push_back("angles: \"dms\", as [field] does not say: degrees, minutes, seconds");
  if (!shots && !table.has("levels") && !table.has("gnss") && !table.has("two_peg"))
    root.faults().add(table.place(), "[field] without observations",
                      "stations, levels or gnss: lists of files", "name the field books");
  job.field = std::move(field);
}

}  // namespace squaredig::job
