// The header of a LAS file, every size in it held against the file's own before anything is taken.
//
// Errors: faults go to the list: no LAS file, a version or point format that is not known,
//   compressed points (LAZ), sizes that do not fit the file, counts that contradict each other,
//   scales that are none.
// Source: ASPRS LAS specification 1.0, 1.1, 1.2, 1.3 R11, 1.4 R15: public header block.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "formats/fault_list.h"

namespace squaredig::formats {

constexpr std::size_t kLasHeaderSize = 375;  // of 1.4, the longest that is known

struct LasHeader {
  unsigned minor = 0;  // of version 1
  unsigned format = 0;
  std::size_t header_size = 0;
  std::size_t stride = 0;  // bytes of one point, its extra bytes with it
  std::uint64_t points_at = 0;
  std::uint64_t count = 0;
  std::uint64_t records = 0;  // variable length records before the points
  std::uint64_t late_at = 0;  // extended ones behind the points
  std::uint64_t late_records = 0;
  bool wkt = false;  // the coordinate system is in WKT
  std::array<double, 3> scale{};
  std::array<double, 3> offset{};
  std::array<double, 3> low{};  // the box the header states
  std::array<double, 3> high{};

  std::uint64_t points_end() const { return points_at + count * stride; }
};

// `bytes` are the first of the file: up to kLasHeaderSize of them.
LasHeader las_header(std::string_view bytes, std::uint64_t file_size, const std::string& file,
                     FaultList& faults);

// Says that the points are compressed, and what to do.
void refuse_laz(const std::string& file, FaultList& faults);

}  // namespace squaredig::formats
