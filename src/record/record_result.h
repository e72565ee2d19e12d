// The answer of the record stage: storage, and what each stage found.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/position.h"
#include "quantity/result_head.h"

namespace squaredig::record {

struct StorageRow {
  Elevation level;
  Volume gross;  // of the tank below the level
  std::optional<Volume> net;
};

struct Storage {
  Volume gross;               // of the whole tank
  std::optional<Volume> net;  // its voids
  std::optional<Elevation> outlet;
  std::optional<Volume> below_outlet;  // net, or gross where no voids are given
  std::string stands_on;               // which underside was taken, in words
  std::vector<StorageRow> table;
};

struct StageVerdict {
  std::string stage;
  std::string verdict;  // in words
  std::string when;     // date of survey or of the job
  std::size_t findings = 0;
};

struct RecordResult {
  ResultHead head;
  Storage storage;
  std::vector<StageVerdict> stages;
};

}  // namespace squaredig::record
