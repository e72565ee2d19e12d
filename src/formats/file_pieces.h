// A file that is not held in memory whole: its bytes in pieces, to be put together in order. Each
// piece can be made by itself, in any order and by any thread.
//
// Errors: none.
// Source: the house's own.
#pragma once

#include <functional>
#include <string>
#include <vector>

namespace squaredig::formats {

using FilePiece = std::function<std::string()>;
using FilePieces = std::vector<FilePiece>;

}  // namespace squaredig::formats
