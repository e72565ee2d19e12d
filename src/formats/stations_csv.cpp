#include "formats/stations_csv.h"

#include <array>
#include <map>

#include "formats/book_angles_internal.h"

namespace squaredig::formats {
namespace {

using field::Face;

enum BookColumn {
  kSetup,
  kStation,
  kInstrumentHeight,
  kTarget,
  kTargetHeight,
  kHorizontal,
  kZenith,
  kSlopeDistance,
  kFace,
  kCode,
  kPrismConstant,
  kTemperature,
  kPressure,
  kHumidity,
  kReferenceTemperature,
  kReferencePressure,
  kReferenceHumidity,
  kWavelength,
  kBookColumns
};

std::vector<ColumnWanted> book_columns() {
  const auto may = Column::Optional;
  return {{"setup"},
          {"station"},
          {"instrument_height"},
          {"target"},
          {"target_height"},
          {"horizontal"},
          {"zenith", "", may},
          {"slope_distance", "", may},
          {"face", "", may},
          {"code", "", may},
          {"prism_constant_mm", "", may},
          {"temperature_c", "temperature", may},
          {"pressure_hpa", "pressure", may},
          {"humidity_percent", "humidity", may},
          {"reference_temperature_c", "", may},
          {"reference_pressure_hpa", "", may},
          {"reference_humidity_percent", "", may},
          {"wavelength_um", "", may}};
}

// What a set-up's later rows may leave blank.
struct Carried {
  std::string station;
  std::optional<double> instrument_height;
  std::map<std::size_t, double> air;  // by column
  bool begun = false;
};

std::string name_of(std::size_t column) { return book_columns()[column].name; }

Face face_of(CsvTable& table) {
  std::string said(table.text(kFace));
  for (char& c : said)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  for (const char* left : {"L", "FL", "1", "I", "LEFT"})
    if (said == left) return Face::Left;
  for (const char* right : {"R", "FR", "2", "II", "RIGHT"})
    if (said == right) return Face::Right;
  if (!said.empty())
    table.fault(kFace, "face " + quoted(table.text(kFace)), "L or R, or nothing",
                "correct the cell");
  return Face::NotSaid;
}

// The face by what is said and what the zenith circle shows.
Face checked_face(CsvTable& table, std::optional<Angle> zenith) {
  const Face said = face_of(table);
  if (!zenith) return said;
  const Face shown = zenith->in_degrees() <= 180 ? Face::Left : Face::Right;
  if (said != Face::NotSaid && said != shown)
    table.fault(kFace,
                std::string("face ") + (said == Face::Left ? "left" : "right") +
                    " with a zenith angle of face " + (shown == Face::Left ? "left" : "right") +
                    ": " + quoted(table.text(kZenith)),
                "zenith angles below half the circle in face left, above it in face right",
                "correct the face or the angle");
  return shown;
}

std::optional<double> ranged(CsvTable& table, std::size_t column, double least, double most,
                             const char* needed) {
  const auto value = table.number(column);
  if (value && (*value < least || *value > most)) {
    table.fault(column, name_of(column) + " " + quoted(table.text(column)), needed,
                "correct the cell");
    return std::nullopt;
  }
  return value;
}

std::optional<double> air_value(CsvTable& table, std::size_t column, Carried& carried) {
  if (!table.has(column)) return std::nullopt;
  if (table.is_blank(column)) {
    const auto before = carried.air.find(column);
    return before == carried.air.end() ? std::nullopt : std::optional(before->second);
  }
  std::optional<double> value;
  if (column == kTemperature || column == kReferenceTemperature)
    value = ranged(table, column, -60, 60, "degrees Celsius from -60 to 60");
  else if (column == kPressure || column == kReferencePressure)
    value = ranged(table, column, 400, 1100, "hectopascals from 400 to 1100");
  else if (column == kWavelength)
    value = ranged(table, column, 0.36, 1.7, "micrometres from 0.36 to 1.7");
  else
    value = ranged(table, column, 0, 100, "percent of relative humidity from 0 to 100");
  if (value) carried.air[column] = *value;
  return value;
}

std::optional<field::DistanceAir> air_of(CsvTable& table, Carried& carried) {
  std::array<std::optional<double>, kBookColumns> v;
  for (std::size_t c = kTemperature; c <= kWavelength; ++c) v[c] = air_value(table, c, carried);
  if (!v[kTemperature] && !v[kPressure]) return std::nullopt;
  const auto need = [&](BookColumn column, const char* why) {
    if (!v[column] && !table.row_has_fault())
      table.fault(column, "no " + name_of(column), why,
                  "fill it in, or leave the air out where the instrument has corrected for it");
  };
  need(kTemperature, "temperature together with pressure");
  need(kPressure, "pressure together with temperature");
  need(kReferenceTemperature, "the air for which the instrument shows distances uncorrected");
  need(kReferencePressure, "the air for which the instrument shows distances uncorrected");
  if (table.row_has_fault()) return std::nullopt;
  return field::DistanceAir{
      {*v[kTemperature], *v[kPressure], v[kHumidity]},
      {*v[kReferenceTemperature], *v[kReferencePressure], v[kReferenceHumidity]},
      v[kWavelength]};
}

void read_setup(CsvTable& table, Carried& carried, field::StationShot& shot) {
  const std::string station(table.text(kStation));
  if (!station.empty() && carried.begun && station != carried.station)
    table.fault(kStation, "station " + quoted(station) + " in set-up " + quoted(shot.setup),
                "one station for a set-up, here " + quoted(carried.station),
                "give the set-up another name where the instrument was moved");
  if (!carried.begun) carried.station = station;
  shot.station = carried.station;
  carried.begun = true;
  if (!table.is_blank(kInstrumentHeight)) {
    const auto height = table.metres(kInstrumentHeight);
    if (height && carried.instrument_height && *height != *carried.instrument_height)
      table.fault(kInstrumentHeight, "a second instrument height in set-up " + quoted(shot.setup),
                  "one instrument height for a set-up",
                  "correct it, or give the set-up another name where the instrument was moved");
    if (height) carried.instrument_height = height;
  }
  shot.instrument_height = Length::metres(carried.instrument_height.value_or(0));
}

void read_sight(CsvTable& table, AngleNotation notation, field::StationShot& shot) {
  if (const auto horizontal = book_angle(table, kHorizontal, "horizontal", notation))
    shot.horizontal = *horizontal;
  if (table.has(kZenith) && !table.is_blank(kZenith)) {
    shot.zenith = book_angle(table, kZenith, "zenith", notation);
    if (const auto height = table.metres(kTargetHeight))
      shot.target_height = Length::metres(*height);
  } else if (!table.is_blank(kTargetHeight)) {
    if (const auto height = table.metres(kTargetHeight))
      shot.target_height = Length::metres(*height);
  }
  if (!table.has(kSlopeDistance) || table.is_blank(kSlopeDistance)) return;
  const auto distance = table.metres(kSlopeDistance);
  if (distance && *distance <= 0)
    table.fault(kSlopeDistance, "slope distance " + quoted(table.text(kSlopeDistance)),
                "a length above zero", "correct it, or leave it blank");
  if (!table.has(kZenith) || table.is_blank(kZenith))
    table.fault(kZenith, "a slope distance without a zenith angle", "both, or neither",
                "fill in the zenith angle");
  if (distance) shot.slope_distance = Length::metres(*distance);
}

field::StationShot read_row(CsvTable& table, AngleNotation notation,
                            std::map<std::string, Carried>& setups, NotationWitness& witness) {
  field::StationShot shot;
  shot.setup = table.name(kSetup);
  shot.target = table.name(kTarget);
  shot.code = table.text(kCode);
  shot.place = table.place(kTarget);
  Carried& carried = setups[shot.setup];
  read_setup(table, carried, shot);
  read_sight(table, notation, shot);
  if (shot.zenith && !carried.instrument_height && !table.row_has_fault())
    table.fault(kInstrumentHeight, "no instrument height in set-up " + quoted(shot.setup),
                "the height of the instrument above its mark", "fill it in");
  shot.face = checked_face(table, shot.zenith);
  if (table.has(kPrismConstant) && !table.is_blank(kPrismConstant))
    if (const auto mm =
            ranged(table, kPrismConstant, -1000, 1000, "millimetres from -1000 to 1000"))
      shot.prism_constant = Length::millimetres(*mm);
  shot.air = air_of(table, carried);
  witness.saw_number(table.text(kHorizontal));
  witness.saw_number(table.text(kZenith));
  if (shot.zenith) witness.saw(table, shot.setup, shot.target, kZenith, shot.face);
  return shot;
}

}  // namespace

StationsFile read_stations_csv(const SourceFile& source, AngleNotation notation) {
  CsvTable table(source, book_columns(), "a total-station book");
  StationsFile file;
  std::map<std::string, Carried> setups;
  NotationWitness witness(notation);
  while (table.next()) {
    field::StationShot shot = read_row(table, notation, setups, witness);
    if (!table.row_has_fault()) file.shots.push_back(std::move(shot));
  }
  if (table.rows() == 0 && table.faults().empty())
    table.faults().add({source.name}, "a header without rows", "sights", "export the book again");
  file.cautions = table.cautions();
  witness.tell(table, file.cautions, source.name);
  file.record = table.finish();
  return file;
}

}  // namespace squaredig::formats
