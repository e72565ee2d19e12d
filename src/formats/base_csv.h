// base.csv: each surveyed point, its deviation and finding; points set aside say why.
//
// Laws: base_csv.1  judged points stand first, in file order, then the points set aside.
// Errors: none.
// Source: RFC 4180, with LF in place of CRLF.
#pragma once

#include <string>

#include "base/base_result.h"

namespace squaredig::formats {

std::string base_csv(const base::BaseResult& result);

}  // namespace squaredig::formats
