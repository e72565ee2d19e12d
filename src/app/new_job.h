// `squaredig new DIR`: a commented job file and empty field books in a folder.
//
// Errors: Refusal where one of the files is there already (nothing is written then), or where the
//   folder cannot be written.
#pragma once

#include <filesystem>

#include "app/messages.h"

namespace squaredig::app {

void new_job(const std::filesystem::path& folder, const Messages& messages);

}  // namespace squaredig::app
