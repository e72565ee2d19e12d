// What reading a LandXML document's surfaces, strings and points has in common: the root, units,
// coordinate system, and the text of the elements that are asked for.
//
// Errors: faults of the file, gathered for one Refusal.
// Source: LandXML 1.2 schema; elements are known by their local names, as files in the field come
//   under several namespaces.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "formats/landxml_units.h"
#include "formats/stated_crs.h"
#include "quantity/position.h"

namespace squaredig::formats {

class LandXmlHandler : public XmlHandler {
 public:
  explicit LandXmlHandler(SourceFile source) : source_(std::move(source)) {}

  void start(const XmlElement& element) final;
  void text(std::string_view piece) final;
  void end() final;

  // What the document says of its coordinate system and units, once it is read to its end.
  StatedCrs stated() const;

  FaultList faults;
  std::vector<std::string> cautions;
  LandXmlUnits units;

 protected:
  // An element begins; its ancestors are path(). Gives true where end_of wants its text.
  virtual bool start_of(const XmlElement& element) = 0;
  // The end of an element whose text was wanted.
  virtual void end_of(std::string_view name, std::string_view text) = 0;
  // The end of any other element.
  virtual void left(std::string_view) {}

  bool inside(std::string_view name) const;
  bool child_of(std::string_view name) const { return !path_.empty() && path_.back() == name; }
  const SourceFile& source() const { return source_; }
  // Where the text now read began.
  const Place& text_place() const { return text_place_; }
  // Numbers separated by XML blanks; a fault, and nothing, where a word is not one finite number.
  std::optional<std::vector<double>> numbers(std::string_view text, const std::string& of_what);
  // The same in groups of `each` numbers; a fault where some are left over or there are none.
  std::optional<std::vector<double>> groups(std::string_view text, std::size_t each,
                                            const std::string& of_what);

 private:
  void take_root(const XmlElement& element);

  SourceFile source_;
  std::vector<std::string> path_;
  std::string space_;
  std::optional<std::string> epsg_code_;
  Place crs_place_;
  std::size_t ignored_ = 0;  // depth inside an element that is passed over
  std::string text_;
  Place text_place_;
  bool wants_text_ = false;
};

// The words of a text, cut at XML blanks.
std::vector<std::string_view> xml_words(std::string_view text);

}  // namespace squaredig::formats
