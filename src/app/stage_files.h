// The files of each stage's result, as bytes by name.
#pragma once

#include <map>
#include <string>

#include "base/base_result.h"
#include "dig/dig_result.h"
#include "ground/ground_result.h"
#include "pegs/pegs_result.h"

namespace squaredig::app {

using Files = std::map<std::string, std::string>;

Files files_of(const ground::GroundResult& result);
Files files_of(const pegs::PegsResult& result);
Files files_of(const dig::DigResult& result);
Files files_of(const base::BaseResult& result);

}  // namespace squaredig::app
