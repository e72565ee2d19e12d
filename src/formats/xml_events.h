// XML in, as a stream of events, with guards: no DOCTYPE (and so no entities of the file's own, no
// outside files), no nesting over 64 deep, every error of form ends the reading.
//
// What: element names and namespaces, attributes, text in pieces. Encodings the XML declaration may
//   name are turned into UTF-8.
// Requires: views live until the callback returns.
// Accuracy: memory is one chunk of the file.
// Errors: a document that is not well-formed XML goes to the list of faults; a Refusal thrown by
// the
//   handler ends the reading and comes out of read_xml.
// Source: XML 1.0 (fifth edition) and Namespaces in XML 1.0, by libxml2 in its SAX2 push mode.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "formats/fault_list.h"
#include "formats/source_file.h"

namespace squaredig::formats {

struct XmlAttribute {
  std::string_view name;
  std::string value;
};

struct XmlElement {
  std::string_view name;
  std::string_view space;  // its namespace; empty: none
  std::span<const XmlAttribute> attributes;
  Place place;  // the last character of its start tag

  // The value of an attribute without namespace, where it is there.
  std::optional<std::string> value(std::string_view attribute) const;
};

class XmlHandler {
 public:
  virtual ~XmlHandler() = default;
  virtual void start(const XmlElement& element) = 0;
  virtual void text(std::string_view piece) = 0;
  virtual void end() = 0;
};

// Reads the whole file and gives its SHA-256. Throws all of `faults` where there are any at the
// end.
std::string read_xml(const SourceFile& source, XmlHandler& handler, FaultList& faults);

}  // namespace squaredig::formats
