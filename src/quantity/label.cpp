#include "quantity/label.h"

#include <algorithm>
#include <array>

#include "quantity/number_text.h"

namespace squaredig {

bool spreadsheet_would_run(std::string_view label) {
  constexpr std::array<std::string_view, 11> kStarts = {"=",
                                                        "+",
                                                        "-",
                                                        "@",
                                                        "\t",
                                                        "\r",
                                                        "\n",
                                                        "\xEF\xBC\x9D",   // full-width =
                                                        "\xEF\xBC\x8B",   // full-width +
                                                        "\xEF\xBC\x8D",   // full-width -
                                                        "\xEF\xBC\xA0"};  // full-width @
  return std::any_of(kStarts.begin(), kStarts.end(),
                     [&](std::string_view start) { return label.starts_with(start); }) &&
         !parse_number(label);
}

}  // namespace squaredig
