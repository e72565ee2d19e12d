// Angles as the field writes them: degrees minutes seconds, decimal degrees, gon.
//
// Requires: the notation is stated by the job; it is never guessed from the digits.
// Laws: angle_text.1  reading what was written gives the angle back to half the last digit.
// Accuracy: one rounding of the degrees; text is rounded to the last digit asked for.
// Errors: nothing for minutes or seconds of 60 or more, for a packed value such as 305.170172 read
//   as degrees minutes seconds, and for any text left over.
// Source: sexagesimal notation; 45.5960 packed must never be printed, carries are made before
//   printing (common practice, no source).
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "quantity/angle.h"

namespace squaredig {

enum class AngleNotation { DegreesMinutesSeconds, DecimalDegrees, Gon };

// "305 17 01.72", "305-17-01.72", "305:17:01.72" or with degree, minute and second signs.
std::optional<Angle> parse_angle(std::string_view text, AngleNotation notation);
// "305 17 01.72" with the seconds rounded to `decimals`, carried into minutes and degrees.
std::string dms_text(Angle angle, int decimals);
// "339.1834": gon, a full turn is 400.
std::string gon_text(Angle angle, int decimals);

}  // namespace squaredig
