// A field file as the job names it: where it is, how messages call it, and what the job says about
// it.
//
// Requires: `path` opens from the current folder; `name` is what the job file writes.
// Errors: none.
// Source: the house's own.
#pragma once

#include <atomic>
#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "quantity/position.h"
#include "quantity/problem.h"
#include "quantity/works.h"

namespace squaredig::formats {

// The unit of the lengths in a file. Foot is the international foot, 0.3048 m exactly;
// UsSurveyFoot is 1200/3937 m.
enum class LengthUnit { Metre, Foot, UsSurveyFoot };

constexpr double metres_per(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::Foot:
      return 0.3048;
    case LengthUnit::UsSurveyFoot:
      return 1200.0 / 3937.0;
    default:
      return 1.0;
  }
}

// A way from another CRS to the job's grid: coordinates there, in metres or in degrees (longitude
// first), to the grid; and what is to be said of it.
struct CrsWay {
  std::function<GridPoint(double east, double north)> move;
  std::string words;
};

// The CRS that coordinates are wanted in.
struct GridWanted {
  int epsg = 0;     // 0: a local grid, for which coordinates of any CRS are taken as they stand
  int heights = 0;  // 0: local heights, likewise
  // The way from an EPSG code, or a Refusal where none is exact; empty: there are no ways.
  std::function<CrsWay(int epsg, const Place& place)> way_from = {};
};

// Counts the bytes of the files that are opened and of what was read of them, for a progress line.
struct ReadMeter {
  std::atomic<std::uint64_t> opened{0};
  std::atomic<std::uint64_t> read{0};
};

struct SourceFile {
  std::string path;
  std::string name;
  // The stated order of a file without a header; empty: it has one.
  std::vector<std::string> columns = {};
  std::optional<LengthUnit> unit = std::nullopt;  // as the job states it
  std::vector<std::string> codes = {};            // take only rows of these codes; empty: all
  std::optional<GridWanted> grid = std::nullopt;  // nothing: a CRS the file states is not compared
  std::shared_ptr<ReadMeter> meter = nullptr;     // nothing: nobody counts
  // The one layer of a drawing or GeoPackage, the one surface of a document; nothing: the only one.
  std::optional<std::string> layer = std::nullopt;
  std::optional<std::string> surface = std::nullopt;
  // The way to do several pieces of the reading at once; empty: there is one thread.
  DoAll together = {};
};

}  // namespace squaredig::formats
