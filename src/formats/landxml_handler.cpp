#include "formats/landxml_handler.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

bool known_space(std::string_view space) {
  constexpr std::string_view kStem = "http://www.landxml.org/schema/LandXML-";
  return space.starts_with(kStem);
}

}  // namespace

std::vector<std::string_view> xml_words(std::string_view text) {
  const auto is_blank = [](char c) { return c == ' ' || c == '\n' || c == '\t' || c == '\r'; };
  std::vector<std::string_view> words;
  const char* at = text.data();
  const char* const end = at + text.size();
  while (true) {
    while (at != end && is_blank(*at)) ++at;
    if (at == end) return words;
    const char* const word = at;
    while (at != end && !is_blank(*at)) ++at;
    words.emplace_back(word, static_cast<std::size_t>(at - word));
  }
}

void LandXmlHandler::take_root(const XmlElement& element) {
  if (element.name != "LandXML") {
    faults.add(element.place, "a document of " + quoted(element.name), "a LandXML document",
               "export the file as LandXML 1.2");
    faults.throw_if_any();
  }
  space_ = element.space;
  if (!known_space(element.space))
    cautions.push_back(source_.name + (element.space.empty()
                                           ? ": no namespace; elements are read by their names"
                                           : ": namespace " + quoted(element.space) +
                                                 "; elements are read by their names"));
}

void LandXmlHandler::start(const XmlElement& element) {
  if (path_.empty() && ignored_ == 0) take_root(element);
  if (wants_text_) {
    faults.add(element.place, "an element " + quoted(element.name) + " inside " + path_.back(),
               "numbers alone", "take it out");
    wants_text_ = false;
  }
  if (ignored_ > 0 || element.name == "Feature" || element.space != space_) {
    ++ignored_;
    return;
  }
  if (child_of("Units")) units.take(element, faults, cautions);
  if (element.name == "CoordinateSystem" && path_.size() == 1 && !epsg_code_) {
    epsg_code_ = element.value("epsgCode");
    crs_place_ = element.place;
  }
  wants_text_ = start_of(element);
  text_.clear();
  if (wants_text_) text_place_ = element.place;
  path_.emplace_back(element.name);
}

void LandXmlHandler::text(std::string_view piece) {
  if (wants_text_ && ignored_ == 0) text_.append(piece);
}

void LandXmlHandler::end() {
  if (ignored_ > 0) {
    --ignored_;
    return;
  }
  const std::string name = std::move(path_.back());
  path_.pop_back();
  const bool wanted = std::exchange(wants_text_, false);
  if (wanted)
    end_of(name, text_);
  else
    left(name);
}

bool LandXmlHandler::inside(std::string_view name) const {
  return std::find(path_.begin(), path_.end(), name) != path_.end();
}

std::optional<std::vector<double>> LandXmlHandler::numbers(std::string_view text,
                                                           const std::string& of_what) {
  std::vector<double> values;
  for (const auto word : xml_words(text)) {
    const auto value = parse_number(word);
    if (!value) {
      faults.add(text_place_, quoted(word) + " in " + of_what + " is not a number",
                 "numbers with a decimal point, blanks between", "correct it");
      return std::nullopt;
    }
    values.push_back(*value);
  }
  return values;
}

std::optional<std::vector<double>> LandXmlHandler::groups(std::string_view text, std::size_t each,
                                                          const std::string& of_what) {
  auto values = numbers(text, of_what);
  if (!values || (values->size() % each == 0 && !values->empty())) return values;
  faults.add(
      text_place_,
      std::to_string(values->size()) + (values->size() == 1 ? " number" : " numbers") + " in " +
          of_what,
      each == 2 ? "pairs of northing and easting" : "northing, easting and elevation of each point",
      "correct it");
  return std::nullopt;
}

StatedCrs LandXmlHandler::stated() const {
  StatedCrs said;
  const std::string text = epsg_code_.value_or("");
  const auto words = xml_words(text);
  if (!words.empty()) {
    std::string_view code = words.front();
    if (code.starts_with("EPSG:") || code.starts_with("epsg:")) code.remove_prefix(5);
    const auto number = parse_number(code);
    FaultList unknown;  // a code that is no code is another system than the job's
    if (number && *number > 0 && *number < 1e6 && *number == std::floor(*number))
      said = crs_of_code(static_cast<int>(*number), crs_place_, unknown);
    said.words = text;
  }
  said.place = crs_place_;
  said.metres = units.metres;
  said.metres_up = units.metres;
  if (units.metres) said.unit_place = units.place;
  return said;
}

}  // namespace squaredig::formats
