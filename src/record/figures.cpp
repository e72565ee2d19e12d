#include <algorithm>

#include "record/record.h"

namespace squaredig::record {
namespace {

Figure metres(std::string what, Length v) { return {std::move(what), v.in_metres(), "m", 3}; }
Figure level(std::string what, Elevation v) { return {std::move(what), v.in_metres(), "m", 3}; }
Figure millimetres(std::string what, Length v) {
  return {std::move(what), v.in_millimetres(), "mm", 1};
}
template <class AnyVolume>
Figure cubic_metres(std::string what, AnyVolume v, const char* unit, int decimals = 1) {
  return {std::move(what), v.in_cubic_metres(), unit, decimals};
}
Figure percent(std::string what, Ratio v) {
  return {std::move(what), v.in_percent(), "percent", 2};
}
Figure count(std::string what, std::size_t n) {
  return {std::move(what), static_cast<double>(n), "", 0};
}

struct InItsUnit {
  double value;
  const char* unit;
  int decimals;
};

InItsUnit plain(const base::Amount& amount) {
  if (const auto* length = std::get_if<Length>(&amount)) return {length->in_millimetres(), "mm", 1};
  if (const auto* fall = std::get_if<Fall>(&amount)) return {fall->in_percent(), "percent", 3};
  return {std::get<Ratio>(amount).in_percent(), "percent", 2};
}

constexpr const char* kBank = "m3 in the ground";
constexpr const char* kPlaced = "m3 placed";

void add_layers(const fill::FillResult& result, std::vector<Figure>& figures) {
  for (const auto& layer : result.layers) {
    figures.push_back(millimetres(layer.name + ", mean thickness", layer.mean_thickness));
    figures.push_back(millimetres(layer.name + ", thinnest", layer.thinnest));
    if (layer.planned && layer.tolerance)
      figures.back().limit = (*layer.planned - *layer.tolerance).in_millimetres();
    figures.back().verdict = words(layer.verdict);
  }
}

}  // namespace

std::vector<Figure> figures_of(const design::Tank& tank, const design::DesignInput& design) {
  std::vector<Figure> figures;
  for (std::size_t i = 0; i < tank.sides(); ++i)
    figures.push_back(metres("side " + tank.side_name(i) + " on the grid", tank.side_length(i)));
  figures.push_back(metres("height", tank.height));
  figures.push_back(level("underside at A", tank.underside.level));
  figures.push_back(level("tank top at A", tank.underside.level + tank.height));
  figures.push_back(level("dig level at A", tank.dig_level.level));
  figures.push_back({"cross-fall", tank.underside.fall.in_percent(), "percent", 3});
  figures.push_back(millimetres("bedding", design.bedding.thickness));
  return figures;
}

std::vector<Figure> figures_of(const pegs::PegsResult& result) {
  std::vector<Figure> figures{count("reference pegs", result.reference.size())};
  if (result.as_set)
    for (const auto& check : result.as_set->checks) {
      figures.push_back(millimetres(check.name, check.value));
      if (check.limit) figures.back().limit = check.limit->in_millimetres();
      figures.back().verdict = words(check.verdict);
    }
  return figures;
}

std::vector<Figure> figures_of(const dig::DigResult& result) {
  std::vector<Figure> figures{cubic_metres("cut", result.cut, kBank)};
  if (result.uncertainty)
    figures.push_back(cubic_metres("its standard deviation", result.uncertainty->sigma, kBank));
  figures.push_back(cubic_metres("second method less first", result.closure.difference, kBank, 9));
  for (const auto& part : result.by_part)
    figures.push_back(cubic_metres(part.part, part.cut, kBank));
  figures.push_back(metres("deepest cut", result.deepest_cut));
  figures.push_back(cubic_metres("fill up to the floor", result.fill_to_floor, "m3"));
  for (const auto& survey : result.progress) {
    figures.push_back(cubic_metres(survey.name + ", dug since the last survey", survey.dug, kBank));
    figures.push_back(cubic_metres(survey.name + ", over-dig", survey.over_dig, kBank));
  }
  return figures;
}

std::vector<Figure> figures_of(const base::BaseResult& result) {
  std::vector<Figure> figures{count("points judged", result.points.size())};
  for (const auto& check : result.checks) {
    if (!check.value) continue;
    const InItsUnit value = plain(*check.value);
    figures.push_back({check.name, value.value, value.unit, value.decimals});
    if (check.limit) figures.back().limit = plain(*check.limit).value;
    figures.back().verdict = words(check.verdict);
  }
  return figures;
}

std::vector<Figure> figures_of(const fill::FillResult& result) {
  CompactedVolume capping;
  for (const auto& layer : result.capping) capping += layer.placed;
  std::vector<Figure> figures{
      cubic_metres("bedding", result.bedding, kPlaced),
      cubic_metres("special side fill", result.special, kPlaced),
      cubic_metres("side fill", result.side, kPlaced),
      cubic_metres("capping", capping, kPlaced),
      cubic_metres("finish", result.finish, kPlaced),
      cubic_metres("all fills less the hole", result.closure.difference, "m3", 9)};
  add_layers(result, figures);
  if (result.tests) {
    figures.push_back(
        percent("least density ratio, " + result.tests->standard, result.tests->least));
    figures.back().limit = result.tests->wanted.in_percent();
    figures.back().verdict = words(result.tests->verdict);
    figures.push_back(percent("mean density ratio, " + result.tests->standard, result.tests->mean));
  }
  if (!result.uplift.empty() && result.uplift.back().ratio)
    figures.push_back(
        {"uplift screening, down over up when finished", *result.uplift.back().ratio, "", 2});
  return figures;
}

}  // namespace squaredig::record
