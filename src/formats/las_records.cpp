#include "formats/las_records.h"

#include <algorithm>
#include <fstream>
#include <vector>

#include "formats/geo_keys.h"
#include "formats/little_endian.h"

namespace squaredig::formats {
namespace {

constexpr std::uint64_t kLongest = std::uint64_t{1} << 20;  // of a record that is looked into
constexpr std::size_t kChunk = std::size_t{1} << 16;
constexpr unsigned kGeoKeys = 34735;
constexpr unsigned kWkt = 2112;
constexpr unsigned kLaszip = 22204;

struct Records {
  std::optional<std::string> geo_keys;
  std::optional<std::string> wkt;
  bool compressed = false;

  bool wants(std::string_view user, unsigned id) {
    if (id == kLaszip && user == "laszip encoded") compressed = true;
    return user == "LASF_Projection" && (id == kGeoKeys || id == kWkt);
  }
  void take(unsigned id, std::string bytes) {
    auto& kept = id == kWkt ? wkt : geo_keys;
    if (!kept) kept = std::move(bytes);
  }
};

std::string_view user_of(std::string_view record) {
  const auto user = record.substr(2, 16);
  return user.substr(0, std::min(user.find('\0'), user.size()));
}

std::string next(InputFile& file, std::uint64_t count) {
  std::string bytes(static_cast<std::size_t>(count), '\0');
  bytes.resize(file.read({bytes.data(), bytes.size()}));
  return bytes;
}

void pass(InputFile& file, std::uint64_t count) {
  std::vector<char> room(static_cast<std::size_t>(std::min<std::uint64_t>(count, kChunk)));
  while (count > 0) {
    const auto part = static_cast<std::size_t>(std::min<std::uint64_t>(count, kChunk));
    if (file.read({room.data(), part}) < part) return;
    count -= part;
  }
}

void too_long(unsigned id, std::uint64_t length, const Place& place, FaultList& faults) {
  faults.add(place, "record " + std::to_string(id) + " of " + std::to_string(length) + " bytes",
             "a record inside the file, of 1 MiB at most", "export the file again");
}

void read_records(InputFile& file, const LasHeader& header, const Place& place, Records& records,
                  FaultList& faults) {
  constexpr std::uint64_t kHead = 54;
  std::uint64_t room = header.points_at - header.header_size;
  for (std::uint64_t i = 0; i < header.records; ++i) {
    const std::string head = room < kHead ? std::string() : next(file, kHead);
    const std::uint64_t length = head.size() < kHead ? 0 : little_u16(head, 20);
    if (head.size() < kHead || length > room - kHead)
      return faults.add(place,
                        "variable length record " + std::to_string(i + 1) + " of " +
                            std::to_string(header.records) + " reaches into the points",
                        "records that end where the points begin", "export the file again");
    room -= kHead + length;
    const unsigned id = little_u16(head, 18);
    if (records.wants(user_of(head), id))
      records.take(id, next(file, length));
    else
      pass(file, length);
  }
  pass(file, room);
}

// Records behind the points are read by a second opening: the first goes on in order.
void read_late_records(const SourceFile& source, const LasHeader& header, std::uint64_t size,
                       const Place& place, Records& records, FaultList& faults) {
  constexpr std::uint64_t kHead = 60;
  std::ifstream file(source.path, std::ios::binary);
  std::uint64_t at = header.late_at;
  std::string head(kHead, '\0');
  for (std::uint64_t i = 0; i < header.late_records; ++i) {
    file.seekg(static_cast<std::streamoff>(at));
    if (at > size - kHead || !file.read(head.data(), static_cast<std::streamsize>(kHead))) return;
    const std::uint64_t length = little_u64(head, 20);
    const unsigned id = little_u16(head, 18);
    if (length > size - kHead - at) return too_long(id, length, place, faults);
    if (records.wants(user_of(head), id)) {
      if (length > kLongest) return too_long(id, length, place, faults);
      std::string bytes(static_cast<std::size_t>(length), '\0');
      file.read(bytes.data(), static_cast<std::streamsize>(length));
      records.take(id, std::move(bytes));
    }
    at += kHead + length;
  }
}

std::string text_of(const std::string& bytes) {
  return bytes.substr(0, std::min(bytes.find('\0'), bytes.size()));
}

}  // namespace

StatedCrs las_crs(InputFile& file, const SourceFile& source, const LasHeader& header,
                  FaultList& faults) {
  const Place place{source.name};
  Records records;
  read_records(file, header, place, records, faults);
  if (header.late_records > 0)
    read_late_records(source, header, file.size(), place, records, faults);
  if (records.compressed) refuse_laz(source.name, faults);
  const std::string wkt = text_of(records.wkt.value_or(""));
  const bool by_wkt = !wkt.empty() && (header.wkt || !records.geo_keys);
  if (by_wkt) return crs_of_wkt(wkt, source.grid ? source.grid->epsg : 0, place, faults);
  if (records.geo_keys) return crs_of_geo_keys(*records.geo_keys, place, faults);
  StatedCrs nothing;
  nothing.place = place;
  return nothing;
}

}  // namespace squaredig::formats
