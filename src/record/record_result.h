// The answer of the record stage: what was designed, set out, dug, verified and filled, and how
// much the tank holds.
//
// Frame and units: the job's grid; the unit of a figure stands beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/position.h"
#include "quantity/result_head.h"
#include "quantity/tolerance.h"

namespace squaredig::record {

struct StorageRow {
  Elevation level;
  Volume gross;  // of the tank below the level
  std::optional<Volume> net;
};

struct Storage {
  Volume gross;               // of the whole tank
  std::optional<Volume> net;  // its voids
  std::optional<Ratio> voids;
  std::optional<Elevation> outlet;
  std::optional<Volume> below_outlet;  // net, or gross where no voids are given
  std::string stands_on;               // which underside was taken, in words
  Elevation lowest;                    // of that underside
  Elevation highest;                   // of the top over it
  std::vector<StorageRow> table;
};

// One number of a stage, to so many decimals on paper; the limit and verdict of one that was
// judged.
struct Figure {
  std::string what;
  double value = 0;
  std::string unit;
  int decimals = 0;
  std::optional<double> limit = {};
  std::string verdict = {};  // empty: not judged
};

struct InputHash {
  std::string file;
  std::string sha256;
};

// What one stage found, with the date it stands for and the files it came from.
struct StageVerdict {
  std::string stage;
  std::string done;     // "set out", "dug", "verified", "filled"
  std::string verdict;  // in words
  std::string when;     // empty: no date is known
  std::string when_is;  // what that date is
  std::size_t findings = 0;
  std::vector<Figure> figures;
  std::vector<InputHash> inputs;
};

struct RecordResult {
  ResultHead head;
  std::vector<Figure> designed;
  std::vector<StageVerdict> stages;
  Storage storage;
  std::vector<GridPosition> tank_designed;  // corners at the underside
  // Corners re-made from the pegs as set where they were measured, on the base as surveyed; nothing
  // where the base was not surveyed.
  std::optional<std::vector<GridPosition>> tank_built;
};

}  // namespace squaredig::record
