// Texts of a drawing as UTF-8.
//
// What: \U+XXXX, and in texts that are drawn also %%d, %%p, %%c and %%nnn, are what they stand for.
//   Bytes that are not UTF-8 are taken in the code page the drawing states, where that is
//   ANSI_1252.
// Errors: bytes in another code page give nothing.
// Source: DXF reference, "Formatting codes"; WHATWG Encoding Standard, index windows-1252.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace squaredig::formats {

enum class DxfTextKind { Name, Drawn };

std::optional<std::string> dxf_text(std::string_view raw, DxfTextKind kind,
                                    std::string_view code_page);

}  // namespace squaredig::formats
