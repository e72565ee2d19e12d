#include "formats/las_header.h"

#include <cmath>

#include "formats/little_endian.h"

namespace squaredig::formats {
namespace {

constexpr std::array<std::size_t, 11> kRecordSizes = {20, 28, 26, 34, 57, 63, 30, 36, 38, 59, 67};
constexpr std::array<std::size_t, 5> kHeaderSizes = {227, 227, 227, 235, 375};  // of 1.0 to 1.4
constexpr std::uint64_t kRecordHeader = 54;  // of a variable length record
constexpr std::uint64_t kLateRecordHeader = 60;

class HeaderReading {
 public:
  HeaderReading(std::string_view bytes, std::uint64_t size, const std::string& file,
                FaultList& faults)
      : bytes_(bytes), size_(size), place_{file}, faults_(faults) {}

  LasHeader read() {
    if (!is_las() || !version()) return header_;
    sizes();
    counts();
    if (faults_.empty()) room();
    frame();
    return header_;
  }

 private:
  void fault(std::string found, std::string needed) {
    faults_.add(place_, std::move(found), std::move(needed), "export the file again");
  }

  bool is_las() {
    if (bytes_.starts_with("LASF")) return true;
    fault(bytes_.empty() ? "an empty file" : "a file that does not begin with LASF", "a LAS file");
    return false;
  }

  bool version() {
    if (bytes_.size() < kHeaderSizes[0]) {
      fault("a header of " + std::to_string(bytes_.size()) + " bytes", "the 227 bytes of LAS 1.0");
      return false;
    }
    const auto major = static_cast<unsigned char>(bytes_[24]);
    header_.minor = static_cast<unsigned char>(bytes_[25]);
    if (major != 1 || header_.minor > 4) {
      fault("LAS version " + std::to_string(major) + "." + std::to_string(header_.minor),
            "LAS 1.0 to 1.4");
      return false;
    }
    if (bytes_.size() < kHeaderSizes[header_.minor]) {
      fault("a file of " + std::to_string(size_) + " bytes", header_size_words());
      return false;
    }
    return true;
  }

  std::string header_size_words() const {
    return "a header of " + std::to_string(kHeaderSizes[header_.minor]) +
           " bytes or more, as LAS 1." + std::to_string(header_.minor) + " has";
  }

  void sizes() {
    header_.header_size = little_u16(bytes_, 94);
    header_.points_at = little_u32(bytes_, 96);
    header_.records = little_u32(bytes_, 100);
    const auto format = static_cast<unsigned char>(bytes_[104]);
    header_.stride = little_u16(bytes_, 105);
    header_.format = format & 0x3FU;
    header_.wkt = header_.minor == 4 && (little_u16(bytes_, 6) & 0x10U) != 0;
    if (header_.header_size < kHeaderSizes[header_.minor])
      fault("a header of " + std::to_string(header_.header_size) + " bytes", header_size_words());
    if (format >= 0x40)  // the two highest bits mark compressed points
      return refuse_laz(place_.file, faults_);
    if (header_.format >= kRecordSizes.size())
      return fault("point format " + std::to_string(header_.format), "formats 0 to 10");
    if (header_.stride < kRecordSizes[header_.format])
      fault("points of " + std::to_string(header_.stride) + " bytes",
            std::to_string(kRecordSizes[header_.format]) + " bytes or more, as format " +
                std::to_string(header_.format) + " has");
  }

  void counts() {
    const std::uint64_t legacy = little_u32(bytes_, 107);
    header_.count = legacy;
    if (header_.minor < 4) return;
    header_.count = little_u64(bytes_, 247);
    header_.late_at = little_u64(bytes_, 235);
    header_.late_records = little_u32(bytes_, 243);
    if (legacy != 0 && legacy != header_.count)
      fault("two numbers of points, " + std::to_string(legacy) + " and " +
                std::to_string(header_.count),
            "one number, or 0 as the older one");
  }

  // What the header counts must have room in the file.
  void room() {
    if (header_.points_at < header_.header_size || header_.points_at > size_)
      return fault(
          "points that begin at byte " + std::to_string(header_.points_at),
          "a place behind the header and inside the file's " + std::to_string(size_) + " bytes");
    const std::uint64_t between = header_.points_at - header_.header_size;
    if (header_.records > between / kRecordHeader)
      fault(std::to_string(header_.records) + " variable length records in " +
                std::to_string(between) + " bytes",
            "at most " + std::to_string(between / kRecordHeader) + " there");
    const std::uint64_t present = (size_ - header_.points_at) / header_.stride;
    if (header_.count > present)
      return fault(std::to_string(header_.count) + " points counted, " + std::to_string(present) +
                       " present",
                   "every point that the header counts");
    if (header_.late_records == 0) return;
    if (header_.late_at < header_.points_end() || header_.late_at > size_ ||
        header_.late_records > (size_ - header_.late_at) / kLateRecordHeader)
      fault(std::to_string(header_.late_records) + " extended records at byte " +
                std::to_string(header_.late_at),
            "records behind the points and inside the file");
  }

  void frame() {
    constexpr std::array<const char*, 3> kAxes = {"easting", "northing", "height"};
    for (std::size_t i = 0; i < 3; ++i) {
      header_.scale[i] = little_f64(bytes_, 131 + 8 * i);
      header_.offset[i] = little_f64(bytes_, 155 + 8 * i);
      header_.high[i] = little_f64(bytes_, 179 + 16 * i);
      header_.low[i] = little_f64(bytes_, 187 + 16 * i);
      if (!std::isfinite(header_.scale[i]) || header_.scale[i] <= 0)
        fault(std::string("a scale of ") + kAxes[i] + " that is no number above 0",
              "a number above 0");
      if (!std::isfinite(header_.offset[i]))
        fault(std::string("an offset of ") + kAxes[i] + " that is not finite", "a number");
    }
  }

  std::string_view bytes_;
  std::uint64_t size_;
  Place place_;
  FaultList& faults_;
  LasHeader header_;
};

}  // namespace

void refuse_laz(const std::string& file, FaultList& faults) {
  faults.add({file}, "compressed points (LAZ)", "a LAS file, which is not compressed",
             "convert it with the program that made it, and name the .las file");
}

LasHeader las_header(std::string_view bytes, std::uint64_t file_size, const std::string& file,
                     FaultList& faults) {
  return HeaderReading(bytes, file_size, file, faults).read();
}

}  // namespace squaredig::formats
