#include "app/stage_table.h"

namespace squaredig::app {
namespace {

constexpr const char* kJobHelp = "the job file, or the folder that holds job.toml";

}  // namespace

const std::vector<CommandName>& command_names() {
  static const std::vector<CommandName> names = {
      {"new", "a commented job.toml and empty field-book templates in DIR", "DIR",
       "the folder to make"},
      {"check", "read everything, compute nothing: what was found, what is missing", "JOB",
       kJobHelp},
      {"run", "every stage whose inputs the job names", "JOB", kJobHelp},
      {"field", "reduce field observations to coordinates", "JOB", kJobHelp},
      {"ground", "build and examine the existing ground surface", "JOB", kJobHelp},
      {"pegs", "footprint corners, reference pegs, schedules; check of pegs as set", "JOB",
       kJobHelp},
      {"dig", "excavation, cut volumes, cut per grid cell, the dig sheet", "JOB", kJobHelp},
      {"base", "as-dug base against level and flatness tolerance", "JOB", kJobHelp},
      {"fill", "backfill lifts, capping layers, wrap: quantities; layers as built", "JOB",
       kJobHelp},
      {"record", "the hand-over pack", "JOB", kJobHelp},
  };
  return names;
}

}  // namespace squaredig::app
