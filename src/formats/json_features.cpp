#include "formats/json_features.h"

#include <algorithm>
#include <charconv>
#include <memory>
#include <nlohmann/json.hpp>
#include <set>

#include "formats/input_file.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

using Json = nlohmann::json;
constexpr int kDeepest = 64;
constexpr std::size_t kChunk = std::size_t{1} << 18;

// The bytes of the file as the parser takes them, with the line it has come to.
class Bytes {
 public:
  explicit Bytes(const SourceFile& source)
      : file_(source), name_(source.name), buffer_(file_.chunk(kChunk)) {
    fill();
    if (end_ >= 3 && std::string_view(buffer_.data(), 3) == "\xEF\xBB\xBF") at_ = 3;
  }
  bool ended() const { return at_ == end_; }
  const char& now() const { return buffer_[at_]; }
  void step() {
    if (buffer_[at_] == '\n') {
      ++line_;
      column_ = 0;
    }
    if (column_ < INT32_MAX) ++column_;
    if (++at_ == end_ && end_ == buffer_.size()) fill();
  }
  Place place() const { return {name_, line_, std::max(column_, 1)}; }
  std::string sha256() { return file_.sha256(); }

 private:
  void fill() {
    at_ = 0;
    end_ = file_.read(buffer_);
  }
  InputFile file_;
  std::string name_;
  std::vector<char> buffer_;
  std::size_t at_ = 0;
  std::size_t end_ = 0;
  int line_ = 1;
  int column_ = 1;
};

struct ByteIterator {
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  Bytes* bytes = nullptr;  // null: the end
  reference operator*() const { return bytes->now(); }
  ByteIterator& operator++() {
    bytes->step();
    return *this;
  }
  ByteIterator operator++(int) {
    const ByteIterator before = *this;
    ++*this;
    return before;
  }
  bool operator==(const ByteIterator& other) const { return ended() == other.ended(); }

 private:
  bool ended() const { return bytes == nullptr || bytes->ended(); }
};

std::string text_of(const Json& object, const std::string& key) {
  const auto found = object.is_object() ? object.find(key) : object.end();
  if (!object.is_object() || found == object.end()) return {};
  if (found->is_string()) return found->get<std::string>();
  return found->is_number() ? found->dump() : std::string();
}

class Reading {
 public:
  Reading(const SourceFile& source, const std::vector<std::string>& labels,
          const std::function<void(JsonFeature&&)>& take, FaultList& faults)
      : labels_(labels), take_(take), faults_(faults), bytes_(source) {}

  JsonFile read() {
    JsonFile file;
    if (const auto root = parsed()) {
      root_of(*root);
      file.crs = crs_of(*root);
    }
    faults_.throw_if_any();
    file.sha256 = bytes_.sha256();
    return file;
  }

 private:
  void fault(std::string found, std::string needed, std::string remedy = "export the file again") {
    faults_.add(bytes_.place(), std::move(found), std::move(needed), std::move(remedy));
  }

  // What is left of the document when every feature has been taken out of it.
  std::optional<Json> parsed() {
    if (bytes_.ended()) {
      fault("an empty file", "a GeoJSON file");
      return std::nullopt;
    }
    try {
      return Json::parse(ByteIterator{&bytes_}, ByteIterator{},
                         [this](int depth, Json::parse_event_t event, Json& value) {
                           return keep(depth, event, value);
                         });
    } catch (const Json::exception&) {
      fault("text that is not JSON", "a GeoJSON file");
      return std::nullopt;
    }
  }

  bool keep(int depth, Json::parse_event_t event, Json& value) {
    const auto level = static_cast<std::size_t>(std::max(depth, 0));
    switch (event) {
      case Json::parse_event_t::object_start:
      case Json::parse_event_t::array_start:
        if (depth > kDeepest) {
          fault("values nested more than 64 deep", "a GeoJSON file");
          faults_.throw_if_any();
        }
        keys_.resize(std::max(keys_.size(), level + 2));
        keys_[level + 1].clear();
        return true;
      case Json::parse_event_t::key:
        if (!keys_[level].insert(value.get<std::string>()).second)
          fault("the key " + squaredig::quoted(value.get<std::string>()) + " twice in one object",
                "each key once");
        if (level == 1) in_features_ = value == "features";
        return true;
      case Json::parse_event_t::object_end:
        if (level != 2 || !in_features_) return true;
        feature_of(value);
        return false;
      default:
        return true;
    }
  }

  void root_of(const Json& root) {
    const std::string type = text_of(root, "type");
    if (type == "FeatureCollection") {
      const auto features = root.find("features");
      if (features == root.end() || !features->is_array())
        fault("a FeatureCollection without an array of features", "features");
      else if (!features->empty())
        fault("a feature that is no object", "objects of type Feature");
    } else if (type == "Feature") {
      feature_of(root);
    } else {
      JsonFeature feature;
      feature.place = bytes_.place();
      geometry_of(root, feature);
      take_(std::move(feature));
    }
  }

  void feature_of(const Json& value) {
    JsonFeature feature;
    feature.place = bytes_.place();
    if (text_of(value, "type") != "Feature")
      return fault("an object without type Feature", "features");
    if (const auto properties = value.find("properties"); properties != value.end()) {
      if (!properties->is_object() && !properties->is_null())
        fault("properties that are no object", "an object with names and values");
      for (const auto& name : labels_)
        if (feature.label.empty()) feature.label = text_of(*properties, name);
      feature.code = text_of(*properties, "code");
      feature.has_code = properties->is_object() && properties->contains("code");
    }
    const auto geometry = value.find("geometry");
    if (geometry == value.end())
      return fault("a feature without the member geometry",
                   "a geometry, or the word for none there");
    if (!geometry->is_null()) geometry_of(*geometry, feature);
    take_(std::move(feature));
  }

  // How deep the positions lie in "coordinates": 0 for a single one.
  static std::optional<int> depth_of(const std::string& kind) {
    if (kind == "Point") return 0;
    if (kind == "MultiPoint" || kind == "LineString") return 1;
    if (kind == "MultiLineString" || kind == "Polygon") return 2;
    if (kind == "MultiPolygon") return 3;
    return std::nullopt;
  }

  void geometry_of(const Json& value, JsonFeature& feature) {
    const std::string kind = text_of(value, "type");
    const auto depth = depth_of(kind);
    if (!depth)
      return fault(kind.empty() ? "a geometry without a type"
                                : "a geometry of type " + squaredig::quoted(kind),
                   "points, lines or polygons");
    feature.kind = kind;
    const auto coordinates = value.find("coordinates");
    if (coordinates == value.end())
      return fault("a " + kind + " without coordinates", "coordinates");
    if (*depth == 0) {
      if (const auto p = position_of(*coordinates, kind)) feature.parts.push_back({*p});
    } else {
      parts_of(*coordinates, *depth, kind, feature);
    }
  }

  void parts_of(const Json& value, int depth, const std::string& kind, JsonFeature& feature) {
    if (!value.is_array())
      return fault("coordinates of a " + kind + " that are no array", "arrays of positions");
    if (depth == 1) {
      std::vector<JsonPosition> part;
      for (const Json& item : value)
        if (const auto p = position_of(item, kind)) part.push_back(*p);
      feature.parts.push_back(std::move(part));
      return;
    }
    const bool rings = depth == 2 && (kind == "Polygon" || kind == "MultiPolygon");
    feature.holes = feature.holes || (rings && value.size() > 1);
    for (const Json& item : value) parts_of(item, depth - 1, kind, feature);
  }

  std::optional<JsonPosition> position_of(const Json& value, const std::string& kind) {
    const bool numbers =
        value.is_array() &&
        std::all_of(value.begin(), value.end(), [](const Json& n) { return n.is_number(); });
    if (!numbers || value.size() < 2 || value.size() > 3) {
      fault(numbers ? "a position of " + std::to_string(value.size()) + " numbers in a " + kind
                    : "a position of a " + kind + " that is no array of numbers",
            "easting, northing and height");
      return std::nullopt;
    }
    JsonPosition p{value[0].get<double>(), value[1].get<double>()};
    if (value.size() == 3) p.up = value[2].get<double>();
    return p;
  }

  StatedCrs crs_of(const Json& root) {
    StatedCrs stated;
    stated.place = {bytes_.place().file};
    const auto crs = root.is_object() ? root.find("crs") : root.end();
    if (!root.is_object() || crs == root.end()) {
      stated.words = "a GeoJSON file without the member crs";
      stated.degrees = true;
      return stated;
    }
    if (crs->is_null()) return stated;
    const std::string name = crs->is_object() && crs->contains("properties")
                                 ? text_of((*crs)["properties"], "name")
                                 : "";
    if (text_of(*crs, "type") != "name" || name.empty()) {
      fault("a coordinate system that is not given by name", "\"crs\" of type \"name\"");
      return stated;
    }
    const Place place = stated.place;
    if (name.ends_with(":CRS84")) {
      stated.degrees = true;
    } else if (const auto code = epsg_of(name)) {
      stated = crs_of_code(*code, place, faults_);
    }
    stated.place = place;
    stated.words = name;
    return stated;
  }

  // "EPSG:2157", "urn:ogc:def:crs:EPSG::2157", with a version between the colons or without.
  static std::optional<int> epsg_of(const std::string& name) {
    if (!name.starts_with("EPSG:") && !name.starts_with("urn:ogc:def:crs:EPSG:"))
      return std::nullopt;
    const char* const digits = name.data() + name.rfind(':') + 1;
    const char* const last = name.data() + name.size();
    int code = 0;
    const auto [end, error] = std::from_chars(digits, last, code);
    return error == std::errc{} && end == last && code > 0 ? std::optional(code) : std::nullopt;
  }

  const std::vector<std::string>& labels_;
  const std::function<void(JsonFeature&&)>& take_;
  FaultList& faults_;
  Bytes bytes_;
  std::vector<std::set<std::string>> keys_;  // of the object open at each depth
  bool in_features_ = false;
};

}  // namespace

JsonFile read_features(const SourceFile& source, const std::vector<std::string>& label_names,
                       const std::function<void(JsonFeature&&)>& take, FaultList& faults) {
  return Reading(source, label_names, take, faults).read();
}

}  // namespace squaredig::formats
