#include "formats/las_read.h"

#include <algorithm>
#include <limits>

#include "formats/las_records.h"
#include "formats/little_endian.h"
#include "formats/point_intake.h"

namespace squaredig::formats {
namespace {

constexpr std::size_t kChunk = std::size_t{1} << 20;

// What the points themselves show, held against the header at the end.
struct Seen {
  std::array<std::int32_t, 3> low{};
  std::array<std::int32_t, 3> high{};
  std::array<std::uint64_t, 256> classes{};
  std::uint64_t not_last = 0;  // points with another return of their pulse below them

  Seen() {
    low.fill(std::numeric_limits<std::int32_t>::max());
    high.fill(std::numeric_limits<std::int32_t>::min());
  }
  void add(const std::array<std::int32_t, 3>& at, unsigned point_class) {
    for (std::size_t i = 0; i < 3; ++i) {
      low[i] = std::min(low[i], at[i]);
      high[i] = std::max(high[i], at[i]);
    }
    ++classes[point_class];
  }
};

struct LasPoint {
  std::array<std::int32_t, 3> at;
  unsigned point_class;
  bool withheld;
  bool last;
};

LasPoint point_of(std::string_view record, unsigned format) {
  LasPoint point{
      {little_i32(record, 0), little_i32(record, 4), little_i32(record, 8)}, 0, false, true};
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(record[at]); };
  // formats 0 to 5: five bits of class, then three flags; later formats give each a byte
  point.point_class = format < 6 ? byte(15) & 0x1FU : byte(16);
  point.withheld = format < 6 ? (byte(15) & 0x80U) != 0 : (byte(15) & 0x04U) != 0;
  // the return's number, and above it how many the pulse has: three bits each, or four
  const unsigned number = byte(14) & (format < 6 ? 7U : 15U);
  const unsigned returns = format < 6 ? (byte(14) >> 3U) & 7U : byte(14) >> 4U;
  point.last = number >= returns;
  return point;
}

class LasReading {
 public:
  LasReading(const LasHeader& header, PointIntake& intake) : header_(header), intake_(intake) {
    for (unsigned c = 0; c < 256; ++c) {
      names_[c] = std::to_string(c);
      wanted_[c] = intake.wants_code(names_[c]);
    }
  }

  void read(InputFile& file) {
    const std::size_t in_chunk = std::max<std::size_t>(1, kChunk / header_.stride);
    std::vector<char> chunk(
        static_cast<std::size_t>(std::min<std::uint64_t>(header_.count, in_chunk)) *
        header_.stride);
    for (std::uint64_t left = header_.count; left > 0;) {
      const auto now = static_cast<std::size_t>(std::min<std::uint64_t>(left, in_chunk));
      const std::size_t got = file.read({chunk.data(), now * header_.stride}) / header_.stride;
      for (std::size_t i = 0; i < got; ++i)
        take({chunk.data() + i * header_.stride, header_.stride});
      left -= got;
      if (got < now)
        return intake_.faults().add(file_place(),
                                    "the file ends after point " + std::to_string(number_),
                                    std::to_string(header_.count) + " points as its header counts",
                                    "export the file again");
    }
  }

  const Seen& seen() const { return seen_; }

 private:
  Place file_place() const { return {intake_.file()}; }

  void take(std::string_view record) {
    if (number_ < std::numeric_limits<int>::max()) ++number_;
    const LasPoint point = point_of(record, header_.format);
    seen_.add(point.at, point.point_class);
    if (point.withheld) return intake_.set_aside(number_, "the point is marked withheld");
    const std::string& code = names_[point.point_class];
    if (!wanted_[point.point_class]) return intake_.set_aside_code(number_, code);
    if (!point.last) ++seen_.not_last;
    std::array<double, 3> p{};
    for (std::size_t i = 0; i < 3; ++i) p[i] = point.at[i] * header_.scale[i] + header_.offset[i];
    intake_.take({p[0], p[1], p[2], {}, code, {"", number_, 1}});
  }

  const LasHeader& header_;
  PointIntake& intake_;
  std::array<std::string, 256> names_;
  std::array<bool, 256> wanted_{};
  Seen seen_;
  int number_ = 0;
};

void tell_box(const LasHeader& header, const Seen& seen, const std::string& file,
              std::vector<std::string>& cautions) {
  for (std::size_t i = 0; i < 3; ++i) {
    const double low = seen.low[i] * header.scale[i] + header.offset[i];
    const double high = seen.high[i] * header.scale[i] + header.offset[i];
    const double grace = header.scale[i] + 1e-9 * (std::abs(low) + std::abs(high));
    if (low > header.low[i] - grace && high < header.high[i] + grace) continue;
    cautions.push_back(file + ": points lie outside the box that the header states");
    return;
  }
}

// Without codes every class and return is ground: that is worth telling where there are several.
void tell_classes(const SourceFile& source, const Seen& seen, std::vector<std::string>& cautions) {
  std::string list;
  int several = 0;
  for (std::size_t c = 0; c < seen.classes.size(); ++c) {
    if (seen.classes[c] == 0) continue;
    ++several;
    list += (list.empty() ? "" : ", ") + std::to_string(c) + " (" +
            std::to_string(seen.classes[c]) + ")";
  }
  if (source.codes.empty() && several > 1)
    cautions.push_back(source.name + ": points of every class are taken, " + list +
                       "; codes = [\"2\"] takes those classified as ground alone");
  if (source.codes.empty() && seen.not_last > 0)
    cautions.push_back(source.name + ": of the points that are taken " +
                       std::to_string(seen.not_last) + " lie above a later return of their pulse");
}

void tell_what_follows(const LasHeader& header, std::uint64_t size, const std::string& file,
                       std::vector<std::string>& cautions) {
  const std::uint64_t behind = size - header.points_end();
  const bool explained = header.minor >= 3 && (header.late_records > 0 || header.format >= 4);
  if (behind >= header.stride && !explained)
    cautions.push_back(file + ": " + std::to_string(behind) +
                       " bytes behind the points that the header counts are not read");
}

}  // namespace

PointsFile read_las_points(const SourceFile& source, const PointsWanted& wanted,
                           PointTable before) {
  InputFile file(source);
  PointIntake intake(source, wanted, std::move(before));
  std::string bytes(kLasHeaderSize, '\0');
  bytes.resize(file.read({bytes.data(), bytes.size()}));
  const LasHeader header = las_header(bytes, file.size(), source.name, intake.faults());
  intake.faults().throw_if_any();
  // what was read of the header's own bytes may reach into what follows a shorter one
  InputFile from_header(source);
  std::string again(header.header_size, '\0');
  from_header.read({again.data(), again.size()});
  intake.place_by(las_crs(from_header, source, header, intake.faults()));
  intake.faults().throw_if_any();
  LasReading reading(header, intake);
  reading.read(from_header);
  if (header.count > 0) {
    tell_box(header, reading.seen(), source.name, intake.cautions());
    tell_what_follows(header, file.size(), source.name, intake.cautions());
  }
  tell_classes(source, reading.seen(), intake.cautions());
  return intake.finish(from_header.sha256());
}

}  // namespace squaredig::formats
