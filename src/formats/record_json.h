// record.json and storage.csv: the hand-over record for machines.
// Laws: record_json.1  every number reads back to the last bit.
// Errors: none.
// Source: RFC 8259, RFC 4180.
#pragma once

#include <string>
#include <string_view>

#include "record/record_result.h"

namespace squaredig::formats {

std::string record_json(const record::RecordResult& result, std::string_view version);
std::string storage_csv(const record::Storage& storage);

}  // namespace squaredig::formats
