// Labels that a spreadsheet would take for a formula when it opens a table of ours.
//
// Laws: label.1  a plain number is no formula, whatever it begins with.
// Accuracy: exact. Errors: none.
// Source: OWASP, "CSV Injection", for the leading characters.
#pragma once

#include <string_view>

namespace squaredig {

// True where the label begins with = + - @, their full-width forms, a tab or a line break, and is
// no plain number.
bool spreadsheet_would_run(std::string_view label);

}  // namespace squaredig
