#include <map>
#include <utility>

#include "formats/dxf_common_internal.h"
#include "formats/dxf_read.h"
#include "formats/point_intake.h"

namespace squaredig::formats {

StatedCrs crs_of(const DxfDrawing& drawing, const SourceFile& source, FaultList& faults,
                 std::vector<std::string>& assumed, std::vector<std::string>& cautions) {
  StatedCrs stated;
  stated.place = {source.name};
  stated.metres = stated.metres_up = drawing.metres;
  if (drawing.metres) stated.unit_place = drawing.unit_place;
  if (drawing.odd_unit && !source.unit)
    faults.add(drawing.unit_place, drawing.unit + ", which no survey is in",
               "6 (metre), 2 (foot), 21 (US survey foot) or 0 (none)",
               "correct it, or state the unit in the job: { file = \"...\", units = \"m\" }");
  else if (drawing.odd_unit)
    cautions.push_back(source.name + ": lengths are taken in " +
                       unit_words(metres_per(*source.unit)) + " as the job states, although " +
                       drawing.unit + " stands in the file");
  else if (drawing.metres && *drawing.metres != 1 && !source.unit)
    assumed.push_back(source.name + ": lengths are taken in " + unit_words(*drawing.metres) +
                      ", as " + drawing.unit + " says");
  return stated;
}

namespace {

std::string passed_over(const DxfDrawing& drawing) {
  std::string list;
  for (const auto& [kind, count] : drawing.passed_over)
    list += (list.empty() ? "" : ", ") + std::to_string(count) + " " + quoted(kind);
  return list;
}

bool has_blocks(const DxfDrawing& drawing) { return drawing.passed_over.contains("INSERT"); }

}  // namespace

void tell_passed_over(const DxfDrawing& drawing, const SourceFile& source,
                      std::vector<std::string>& cautions) {
  const std::string list = passed_over(drawing);
  if (!list.empty())
    cautions.push_back(source.name + ": not used: " + list +
                       (has_blocks(drawing) ? "; what lies in blocks is not read" : ""));
}

void refuse_without(const std::string& wanted, const std::string& needed, const DxfDrawing& drawing,
                    const SourceFile& source, FaultList& faults) {
  if (!faults.empty()) return;
  const std::string list = passed_over(drawing);
  faults.add({source.name}, "no " + wanted + (list.empty() ? "" : ", but " + list), needed,
             has_blocks(drawing) ? "explode its blocks, as what lies in them is not read"
                                 : "export them as these");
}

bool DxfLayers::wants(const DxfEntity& entity) {
  if (!source_.layer || entity.layer == *source_.layer) {
    found_ = true;
    return true;
  }
  ++others_[entity.layer];
  return false;
}

void DxfLayers::finish(FaultList& faults) const {
  if (!source_.layer || found_ || !faults.empty()) return;
  std::string list;
  for (const auto& [layer, count] : others_) list += (list.empty() ? "" : ", ") + quoted(layer);
  faults.add({source_.name},
             others_.empty() ? "nothing of its kind on any layer" : "layers " + list,
             "a layer " + quoted(*source_.layer), "correct the layer's name in the job");
}

namespace {

struct DrawnPoint {
  double east, north;
  std::optional<double> up;
  std::size_t layer;
  int line;
};

class PointsOfDrawing {
 public:
  PointsOfDrawing(const SourceFile& source, FaultList& faults)
      : layers_(source), faults_(faults), file_(source.name) {}

  void take(const DxfEntity& entity) {
    if (!entity.has(10) || !entity.has(20)) {
      if (entity.kind == "POINT")
        faults_.add({file_, entity.line, 1}, "a POINT without groups 10 and 20",
                    "easting and northing", "export it again");
      return;
    }
    const std::pair at{entity.value(10, 0), entity.value(20, 0)};
    if (entity.kind == "TEXT") {
      if (!texts_.try_emplace(at, entity.text).second) ++more_texts_;
      return;
    }
    if (!layers_.wants(entity)) return;
    points_.push_back({at.first, at.second,
                       entity.has(30) ? std::optional(entity.value(30, 0)) : std::nullopt,
                       number_of(entity.layer), entity.line});
  }

  bool empty() const { return points_.empty(); }

  void give(PointIntake& intake) const {
    layers_.finish(intake.faults());
    for (const DrawnPoint& p : points_) {
      const std::string& layer = names_[p.layer];
      const auto text = texts_.find({p.east, p.north});
      if (!intake.wants_code(layer))
        intake.set_aside_code(p.line, layer);
      else
        intake.take({p.east,
                     p.north,
                     p.up,
                     text == texts_.end() ? "" : text->second,
                     layer,
                     {"", p.line, 1}});
    }
    if (more_texts_ > 0)
      intake.cautions().push_back(intake.file() + ": " + std::to_string(more_texts_) +
                                  " texts stand where another stands already; the first is the "
                                  "label");
  }

 private:
  std::size_t number_of(const std::string& layer) {
    const auto [found, fresh] = numbers_.try_emplace(layer, names_.size());
    if (fresh) names_.push_back(layer);
    return found->second;
  }

  DxfLayers layers_;
  FaultList& faults_;
  std::string file_;
  std::vector<DrawnPoint> points_;
  std::map<std::pair<double, double>, std::string> texts_;
  std::size_t more_texts_ = 0;
  std::map<std::string, std::size_t> numbers_;
  std::vector<std::string> names_;
};

}  // namespace

PointsFile read_dxf_points(const SourceFile& source, const PointsWanted& wanted,
                           PointTable before) {
  PointIntake intake(source, wanted, std::move(before));
  PointsOfDrawing points(source, intake.faults());
  const DxfDrawing drawing = read_dxf(
      source, {"POINT", "TEXT"}, [&](DxfEntity&& e) { points.take(e); }, intake.faults());
  intake.place_by(crs_of(drawing, source, intake.faults(), intake.assumed(), intake.cautions()));
  if (intake.faults().empty()) points.give(intake);
  if (points.empty()) refuse_without("POINT", "points as POINT", drawing, source, intake.faults());
  tell_passed_over(drawing, source, intake.cautions());
  return intake.finish(drawing.sha256);
}

}  // namespace squaredig::formats
