// LAS files put together byte by byte for tests, by the tables of the ASPRS LAS specification 1.4
// R15 (public header block; point data record formats 0 to 10), none of the program's own code.
#pragma once

#include <array>
#include <cstdint>
#include <cstring>
#include <string>
#include <vector>

namespace squaredig::testing {

struct MadeLasPoint {
  std::int32_t x, y, z;
  unsigned point_class = 2;
  bool withheld = false;
  unsigned number = 1;  // of the return, of so many
  unsigned returns = 1;
};

struct MadeLas {
  unsigned minor = 2;
  unsigned format = 0;
  std::size_t extra_bytes = 0;
  double scale = 0.001;
  std::array<double, 3> offset = {715000, 734000, 0};
  bool wkt_flag = false;
  std::vector<std::pair<unsigned, std::string>> records = {};  // id and bytes, of LASF_Projection
  std::vector<std::pair<unsigned, std::string>> late_records = {};
  std::vector<MadeLasPoint> points = {
      {100250, 200500, 62000}, {101250, 200500, 62500, 1}, {100250, 201500, 63000}};
};

template <class Number>
void put(std::string& bytes, std::size_t at, Number value) {
  std::memcpy(bytes.data() + at, &value, sizeof value);  // this machine stores low bytes first
}

inline std::string las_bytes(const MadeLas& made) {
  constexpr std::array<std::size_t, 11> kSizes = {20, 28, 26, 34, 57, 63, 30, 36, 38, 59, 67};
  const std::size_t header = made.minor == 4 ? 375 : made.minor == 3 ? 235 : 227;
  const std::size_t stride = kSizes.at(made.format) + made.extra_bytes;
  std::string records;
  for (const auto& [id, payload] : made.records) {
    std::string head(54, '\0');
    std::memcpy(head.data() + 2, "LASF_Projection", 15);
    put(head, 18, static_cast<std::uint16_t>(id));
    put(head, 20, static_cast<std::uint16_t>(payload.size()));
    records += head + payload;
  }
  std::string bytes(header, '\0');
  std::memcpy(bytes.data(), "LASF", 4);
  if (made.wkt_flag) bytes[6] = 0x10;
  bytes[24] = 1;
  bytes[25] = static_cast<char>(made.minor);
  put(bytes, 94, static_cast<std::uint16_t>(header));
  put(bytes, 96, static_cast<std::uint32_t>(header + records.size()));
  put(bytes, 100, static_cast<std::uint32_t>(made.records.size()));
  bytes[104] = static_cast<char>(made.format);
  put(bytes, 105, static_cast<std::uint16_t>(stride));
  const auto count = made.points.size();
  put(bytes, 107, static_cast<std::uint32_t>(made.format < 6 ? count : 0));
  for (std::size_t i = 0; i < 3; ++i) {
    put(bytes, 131 + 8 * i, made.scale);
    put(bytes, 155 + 8 * i, made.offset[i]);
    put(bytes, 179 + 16 * i, 1e7);
    put(bytes, 187 + 16 * i, -1e7);
  }
  bytes += records;
  for (const MadeLasPoint& point : made.points) {
    std::string record(stride, '\x5A');  // what is not looked at holds anything
    put(record, 0, point.x);
    put(record, 4, point.y);
    put(record, 8, point.z);
    record[14] = static_cast<char>(point.number | point.returns << (made.format < 6 ? 3U : 4U));
    if (made.format < 6) {
      record[15] = static_cast<char>(point.point_class | (point.withheld ? 0x80U : 0U));
    } else {
      record[15] = static_cast<char>(point.withheld ? 0x04 : 0);
      record[16] = static_cast<char>(point.point_class);
    }
    bytes += record;
  }
  if (made.minor == 4) {
    put(bytes, 247, static_cast<std::uint64_t>(count));
    put(bytes, 235, static_cast<std::uint64_t>(bytes.size()));
    put(bytes, 243, static_cast<std::uint32_t>(made.late_records.size()));
  }
  for (const auto& [id, payload] : made.late_records) {
    std::string head(60, '\0');
    std::memcpy(head.data() + 2, "LASF_Projection", 15);
    put(head, 18, static_cast<std::uint16_t>(id));
    put(head, 20, static_cast<std::uint64_t>(payload.size()));
    bytes += head + payload;
  }
  return bytes;
}

// The keys of a GeoTIFF directory: key and value.
inline std::string geo_keys(const std::vector<std::pair<unsigned, unsigned>>& keys) {
  std::string bytes(8 + 8 * keys.size(), '\0');
  put(bytes, 0, std::uint16_t{1});
  put(bytes, 2, std::uint16_t{1});
  put(bytes, 6, static_cast<std::uint16_t>(keys.size()));
  for (std::size_t i = 0; i < keys.size(); ++i) {
    put(bytes, 8 + 8 * i, static_cast<std::uint16_t>(keys[i].first));
    put(bytes, 12 + 8 * i, std::uint16_t{1});
    put(bytes, 14 + 8 * i, static_cast<std::uint16_t>(keys[i].second));
  }
  return bytes;
}

}  // namespace squaredig::testing
