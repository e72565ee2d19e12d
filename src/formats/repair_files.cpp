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
constexpr const char* kThin = "BEDDING-TOO-THIN";
constexpr const char* kThick = "BEDDING-TOO-THICK";
constexpr const char* kSkinLabels = "BEDDING-LABELS";
const Length kLetter = Length::metres(0.15);

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
  csv.word(patch.by_hand ? "hand" : "machine");
  csv.number(patch.area.in_square_metres()).number(patch.volume.in_cubic_metres());
  csv.metres(patch.along_ab.first).metres(patch.along_ab.second);
  csv.metres(patch.across_ab.first).metres(patch.across_ab.second);
  spot_cells(csv, patch.deepest);
  csv.word(patch.note).end_row();
  for (const RepairSpot& spot : patch.spots) {
    csv.count(patch.number).word(work_words(patch.work)).word("point");
    for (int blank = 0; blank < 7; ++blank) csv.blank();
    spot_cells(csv, spot);
    csv.blank().end_row();
  }
}

void draw_rings(DxfText& dxf, const char* layer, const std::vector<std::vector<GridPoint>>& rings) {
  for (const auto& ring : rings)
    for (std::size_t i = 0; i < ring.size(); ++i)
      dxf.line(layer, ring[i], ring[(i + 1) % ring.size()]);
}

void draw(DxfText& dxf, const RepairPatch& patch) {
  draw_rings(dxf, layer_of(patch.work), patch.rings);
  dxf.text(kLabels, ahead(patch.deepest.at, Bearing::degrees(45), kLetter * 2),
           std::to_string(patch.number) + ": " + work_words(patch.work), kLetter * 1.5);
  for (const RepairSpot& spot : patch.spots) {
    dxf.point(layer_of(patch.work), spot.at, std::nullopt);
    dxf.text(kLabels, ahead(spot.at, Bearing::degrees(135), kLetter),
             fixed(spot.move.in_millimetres(), 0), kLetter);
  }
}

// Where the bedding leaves its least or most, with the bedding at the worst place.
void draw(DxfText& dxf, const char* layer,
          const std::optional<std::vector<base::SkinPatch>>& skin) {
  if (!skin) return;
  for (const base::SkinPatch& patch : *skin) {
    draw_rings(dxf, layer, patch.rings);
    dxf.point(layer, patch.at, std::nullopt);
    dxf.text(kSkinLabels, ahead(patch.at, Bearing::degrees(225), kLetter * 2),
             "bedding " + fixed(patch.worst.in_millimetres(), 0) + " mm", kLetter);
  }
}

}  // namespace

std::string repair_csv(const base::BaseResult& result) {
  CsvText csv({"patch", "work", "row", "by", "area_m2", "volume_m3", "along_ab_from", "along_ab_to",
               "across_ab_from", "across_ab_to", "point", "easting", "northing", "along_ab",
               "across_ab", "move_mm", "where", "note"});
  for (const RepairPatch& patch : result.repair) patch_rows(csv, patch);
  return csv.take();
}

std::string repair_dxf(const base::BaseResult& result) {
  DxfText dxf;
  dxf.layer(kTrim, DxfColour::Red).layer(kMakeUp, DxfColour::Blue);
  dxf.layer(kLabels, DxfColour::White);
  dxf.layer(kThin, DxfColour::Yellow).layer(kThick, DxfColour::Cyan);
  dxf.layer(kSkinLabels, DxfColour::White);
  for (const RepairPatch& patch : result.repair) draw(dxf, patch);
  if (result.skin) {
    draw(dxf, kThin, result.skin->too_thin);
    draw(dxf, kThick, result.skin->too_thick);
  }
  return dxf.take();
}

}  // namespace squaredig::formats
