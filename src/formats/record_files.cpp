#include "formats/record_files.h"

#include "formats/gpkg_layers_internal.h"

namespace squaredig::formats {
namespace {

GpkgField text(const char* name) { return {name, GpkgType::Text}; }
GpkgField real(const char* name) { return {name, GpkgType::Number}; }
GpkgField whole(const char* name) { return {name, GpkgType::Count}; }

GpkgLayer tank_layer(const record::RecordResult& record) {
  GpkgLayer layer{"tank", GpkgShape::Polygon, {text("state")}, {}};
  layer.features.push_back({{record.tank_designed}, {std::string("as designed")}});
  if (record.tank_built)
    layer.features.push_back({{*record.tank_built}, {std::string("as built")}});
  return layer;
}

GpkgLayer as_set_layer(const pegs::AsSetResult& as_set) {
  GpkgLayer layer{
      "pegs_as_set",
      GpkgShape::PointInPlan,
      {text("name"), real("delta_e_mm"), real("delta_n_mm"), real("along_mm"), real("across_mm")},
      {}};
  for (const auto& peg : as_set.points)
    layer.features.push_back({{{on(peg.measured, std::nullopt)}},
                              {peg.name, peg.delta_e.in_millimetres(), peg.delta_n.in_millimetres(),
                               peg.along.in_millimetres(), peg.across.in_millimetres()}});
  return layer;
}

GpkgLayer base_layer(const base::BaseResult& base) {
  GpkgLayer layer{
      "base_points",
      GpkgShape::Point,
      {text("point"), text("code"), real("dig_level"), real("deviation_mm"), real("uncertainty_mm"),
       real("bedding_mm"), text("verdict"), text("finding"), text("file"), whole("line")},
      {}};
  for (const auto& p : base.points)
    layer.features.push_back(
        {{{p.at}},
         {p.point, p.code, p.dig_level.in_metres(), p.deviation.in_millimetres(),
          p.uncertainty.in_millimetres(), p.bedding.in_millimetres(), std::string(words(p.verdict)),
          p.finding, p.place.file, static_cast<std::int64_t>(p.place.line)}});
  return layer;
}

GpkgLayer layers_layer(const fill::FillResult& fill) {
  GpkgLayer made{"layers",
                 GpkgShape::Point,
                 {text("layer"), text("point"), real("thickness_mm"), real("planned_mm"),
                  text("verdict_of_layer")},
                 {}};
  for (const auto& layer : fill.layers)
    for (const auto& p : layer.points)
      made.features.push_back(
          {{{p.at}},
           {layer.name, p.point, p.thickness.in_millimetres(),
            layer.planned ? GpkgValue(layer.planned->in_millimetres()) : GpkgValue(),
            std::string(words(layer.verdict))}});
  return made;
}

void add_test(GpkgLayer& tests, const char* stage, const std::string& layer, GridPoint at,
              Ratio ratio, Verdict verdict, const Place& place) {
  tests.features.push_back(
      {{{on(at, std::nullopt)}},
       {std::string(stage), layer, ratio.in_percent(), std::string(words(verdict)), place.file,
        static_cast<std::int64_t>(place.line)}});
}

GpkgLayer tests_layer(const RecordParts& parts) {
  GpkgLayer layer{
      "tests",
      GpkgShape::PointInPlan,
      {text("stage"), text("layer"), real("percent"), text("verdict"), text("file"), whole("line")},
      {}};
  if (parts.base)
    for (const auto& t : parts.base->compaction)
      add_test(layer, "base", t.layer, t.at, t.ratio, t.verdict, t.place);
  if (parts.fill && parts.fill->tests)
    for (const auto& t : parts.fill->tests->tests)
      add_test(layer, "fill", t.layer, t.at, t.ratio, t.verdict, t.place);
  return layer;
}

}  // namespace

std::string record_gpkg(const RecordParts& parts, GpkgOut out) {
  out.layers.push_back(tank_layer(parts.record));
  if (parts.dig) {
    out.layers.push_back(rings_layer("toe", {parts.dig->toe}));
    out.layers.push_back(rings_layer("crest", parts.dig->crest));
    out.layers.push_back(faces_layer(parts.dig->excavated));
  }
  if (parts.pegs) out.layers.push_back(pegs_layer(parts.pegs->reference));
  if (parts.pegs && parts.pegs->as_set) out.layers.push_back(as_set_layer(*parts.pegs->as_set));
  if (parts.base) out.layers.push_back(base_layer(*parts.base));
  if (parts.fill && !parts.fill->layers.empty()) out.layers.push_back(layers_layer(*parts.fill));
  if (auto tests = tests_layer(parts); !tests.features.empty())
    out.layers.push_back(std::move(tests));
  return geopackage_bytes(out);
}

}  // namespace squaredig::formats
