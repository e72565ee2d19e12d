#include "formats/repair_files.h"

#include "formats/csv_text.h"
#include "formats/dxf_write.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

using base::RepairPatch;
using base::RepairSpot;
using base::Work;

constexpr const char* kTrim = "TRIM";
constexpr const char* kMakeUp = "MAKE-UP";
constexpr const char* kLabels = "REPAIR-LABELS";

const char* work_words(Work work) { return work == Work::Trim ? "trim" : "make up"; }
const char* layer_of(Work work) { return work == Work::Trim ? kTrim : kMakeUp; }

std::string tied(const RepairSpot& spot) {
  return fixed(spot.along_ab.in_metres(), 2) + " along A-B, " +
         fixed(spot.across_ab.in_metres(), 2) + " in";
}

void spot_cells(CsvText& csv, const RepairSpot& spot) {
  csv.label(spot.point).place(spot.at).metres(spot.along_ab).metres(spot.across_ab);
  csv.millimetres(spot.move).word(tied(spot));
}

void patch_rows(CsvText& csv, const RepairPatch& patch) {
  csv.count(patch.number).word(work_words(patch.work)).word("patch");
  csv.number(patch.area.in_square_metres()).number(patch.volume.in_cubic_metres());
  spot_cells(csv, patch.deepest);
  csv.word(patch.note).end_row();
  for (const RepairSpot& spot : patch.spots) {
    csv.count(patch.number).word(work_words(patch.work)).word("point").blank().blank();
    spot_cells(csv, spot);
    csv.blank().end_row();
  }
}

void draw(DxfText& dxf, const RepairPatch& patch) {
  const Length letter = Length::metres(0.15);
  for (const auto& ring : patch.rings)
    for (std::size_t i = 0; i < ring.size(); ++i)
      dxf.line(layer_of(patch.work), ring[i], ring[(i + 1) % ring.size()]);
  dxf.text(kLabels, ahead(patch.deepest.at, Bearing::degrees(45), letter * 2),
           std::to_string(patch.number) + ": " + work_words(patch.work), letter * 1.5);
  for (const RepairSpot& spot : patch.spots) {
    dxf.point(layer_of(patch.work), spot.at, std::nullopt);
    dxf.text(kLabels, ahead(spot.at, Bearing::degrees(135), letter),
             fixed(spot.move.in_millimetres(), 0), letter);
  }
}

}  // namespace

std::string repair_csv(const base::BaseResult& result) {
  CsvText csv({"patch", "work", "row", "area_m2", "volume_m3", "point", "easting", "northing",
               "along_ab", "across_ab", "move_mm", "where", "note"});
  for (const RepairPatch& patch : result.repair) patch_rows(csv, patch);
  return csv.take();
}

std::string repair_dxf(const base::BaseResult& result) {
  DxfText dxf;
  dxf.layer(kTrim, DxfColour::Red).layer(kMakeUp, DxfColour::Blue);
  dxf.layer(kLabels, DxfColour::White);
  for (const RepairPatch& patch : result.repair) draw(dxf, patch);
  return dxf.take();
}

}  // namespace squaredig::formats
