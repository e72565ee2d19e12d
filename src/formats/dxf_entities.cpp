#include "formats/dxf_entities.h"

#include <algorithm>
#include <set>

#include "formats/dxf_text.h"
#include "quantity/number_text.h"

namespace squaredig::formats {
namespace {

constexpr int kLastPlain = 999;  // what follows from 1000 on belongs to other programs
constexpr int kEmbedded = 101;   // another object's groups follow

// The groups each kind is read by; others are of no account.
const std::map<std::string, std::set<int>>& groups_of_kinds() {
  static const std::map<std::string, std::set<int>> kGroups = {
      {"POINT", {10, 20, 30, 67}},
      {"LINE", {10, 20, 30, 11, 21, 31, 67}},
      {"TEXT", {10, 20, 30, 67, 210, 220, 230}},
      {"POLYLINE", {10, 20, 30, 70, 67, 210, 220, 230}},
      {"VERTEX", {10, 20, 30, 42, 70, 71, 72, 73, 74}},
      {"LWPOLYLINE", {38, 70, 67, 90, 210, 220, 230}},
      {"3DFACE", {10, 20, 30, 11, 21, 31, 12, 22, 32, 13, 23, 33, 67}}};
  return kGroups;
}

// The values of $INSUNITS that surveys are drawn in.
std::optional<double> metres_of(double units) {
  if (units == 2) return metres_per(LengthUnit::Foot);
  if (units == 6) return metres_per(LengthUnit::Metre);
  if (units == 21) return metres_per(LengthUnit::UsSurveyFoot);
  return std::nullopt;
}

class Reading {
 public:
  Reading(const SourceFile& source, const std::vector<std::string>& kinds,
          const std::function<void(DxfEntity&&)>& take, FaultList& faults)
      : name_(source.name),
        kinds_(kinds.begin(), kinds.end()),
        take_(take),
        faults_(faults),
        pairs_(source, faults) {}

  DxfDrawing read() {
    advance();
    while (pair_ != nullptr && !done_) top();
    if (!done_ && faults_.empty())
      fault(pairs_.line(), "the file ends without EOF", "a whole drawing", "export it again");
    if (!any_entities_ && faults_.empty())
      fault(1, "no section ENTITIES", "a drawing in DXF", "export it again");
    drawing_.sha256 = pairs_.sha256();
    return std::move(drawing_);
  }

 private:
  void fault(int line, std::string found, std::string needed, std::string remedy) {
    faults_.add({name_, std::max(line, 1), 1}, std::move(found), std::move(needed),
                std::move(remedy));
  }
  void advance() { pair_ = pairs_.next(); }
  bool at(int code, std::string_view value) const {
    return pair_ != nullptr && pair_->code == code && pair_->value == value;
  }
  // Gives up: what follows cannot be told.
  void give_up(std::string found, std::string needed) {
    fault(pair_ == nullptr ? pairs_.line() : pair_->line, std::move(found), std::move(needed),
          "export it again");
    pair_ = nullptr;
  }

  void top() {
    if (at(0, "EOF")) {
      done_ = true;
      return;
    }
    if (!at(0, "SECTION"))
      return give_up(quoted(pair_->value) + " outside every section", "SECTION or EOF");
    advance();
    if (pair_ == nullptr || pair_->code != 2) return give_up("a section without a name", "a name");
    const std::string section = pair_->value;
    advance();
    if (section == "HEADER") return header();
    if (section == "ENTITIES") return entities();
    while (pair_ != nullptr && !at(0, "ENDSEC")) {
      if (at(0, "SECTION") || at(0, "EOF"))
        return give_up("section " + quoted(section) + " is not closed", "ENDSEC");
      advance();
    }
    advance();
  }

  void header() {
    std::string variable;
    while (pair_ != nullptr && pair_->code != 0) {
      if (pair_->code == 9) variable = pair_->value;
      if (variable == "$INSUNITS" && pair_->code == 70) take_units();
      if (variable == "$DWGCODEPAGE" && pair_->code == 3) {
        code_page_ = std::string(trimmed(pair_->value));
        std::transform(code_page_.begin(), code_page_.end(), code_page_.begin(),
                       [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
      }
      advance();
    }
    if (pair_ != nullptr && !at(0, "ENDSEC"))
      return give_up("section \"HEADER\" is not closed", "ENDSEC");
    advance();
  }

  void take_units() {
    const auto units = parse_number(pair_->value);
    drawing_.unit = "$INSUNITS " + pair_->value;
    drawing_.unit_place = {name_, pair_->line, 1};
    if (!units) return fault(pair_->line, drawing_.unit, "a whole number", "export it again");
    drawing_.metres = metres_of(*units);
    drawing_.odd_unit = !drawing_.metres && *units != 0;
  }

  void entities() {
    any_entities_ = true;
    while (pair_ != nullptr && !at(0, "ENDSEC")) {
      if (pair_->code != 0) return give_up("a group outside every entity", "an entity");
      if (pair_->value == "SECTION" || pair_->value == "EOF")
        return give_up("section \"ENTITIES\" is not closed", "ENDSEC");
      const std::string kind = pair_->value;
      if (kind == "VERTEX" || kind == "SEQEND") {
        give_up(quoted(kind) + " outside a POLYLINE", "the entity it belongs to");
        return;
      }
      const bool wanted = kinds_.contains(kind);
      DxfEntity entity = one(wanted || kind == "POLYLINE");
      if (kind == "POLYLINE" || kind == "INSERT") followers(entity, wanted);
      if (pair_ == nullptr) return;
      if (entity.value(67, 0) != 0)
        ++drawing_.passed_over[kind + " in paper space"];
      else if (!wanted)
        ++drawing_.passed_over[kind];
      else
        take_(std::move(entity));
    }
    advance();
  }

  // Vertices of a polyline, attributes of an insertion, up to SEQEND.
  void followers(DxfEntity& entity, bool wanted) {
    const bool polyline = entity.kind == "POLYLINE";
    const char* const part = polyline ? "VERTEX" : "ATTRIB";
    if (!polyline && !at(0, part)) return;
    while (pair_ != nullptr && at(0, part)) {
      DxfEntity vertex = one(wanted && polyline);
      if (wanted && polyline) entity.vertices.push_back(std::move(vertex));
    }
    if (pair_ == nullptr) return;
    if (!at(0, "SEQEND")) return give_up(quoted(pair_->value) + " in a " + entity.kind, "SEQEND");
    one(false);
  }

  // The entity that begins here, read to the next group 0.
  DxfEntity one(bool wanted) {
    DxfEntity entity;
    entity.kind = pair_->value;
    entity.line = pair_->line;
    const auto known = groups_of_kinds().find(entity.kind);
    const bool many = entity.kind == "LWPOLYLINE";
    bool own = true;
    for (advance(); pair_ != nullptr && pair_->code != 0; advance()) {
      if (pair_->code == kEmbedded) own = false;
      if (!wanted || !own || pair_->code > kLastPlain) continue;
      const int code = pair_->code;
      if (code == 8) entity.layer = in_utf8(DxfTextKind::Name);
      if (code == 1 && entity.kind == "TEXT") entity.text = in_utf8(DxfTextKind::Drawn);
      if (many && (code == 10 || code == 20 || code == 42))
        take_corner(entity);
      else if (known != groups_of_kinds().end() && known->second.contains(code))
        take_number(entity);
    }
    return entity;
  }

  std::string in_utf8(DxfTextKind kind) {
    auto text = dxf_text(pair_->value, kind, code_page_);
    if (!text)
      fault(pair_->line, "text that is not UTF-8, in the code page " + quoted(code_page_),
            "UTF-8 or ANSI_1252", "export the drawing in one of these");
    return text.value_or("");
  }

  // Each vertex of a lightweight polyline begins with its group 10.
  void take_corner(DxfEntity& entity) {
    if (pair_->code == 10) {
      entity.vertices.emplace_back();
      entity.vertices.back().kind = "VERTEX";
      entity.vertices.back().line = pair_->line;
    }
    if (entity.vertices.empty())
      return fault(pair_->line, "group " + std::to_string(pair_->code) + " before the first vertex",
                   "group 10 at the beginning of each vertex", "export it again");
    take_number(entity.vertices.back());
  }

  void take_number(DxfEntity& entity) {
    const auto value = parse_number(pair_->value);
    const std::string what = "group " + std::to_string(pair_->code) + " of " + entity.kind;
    if (!value)
      fault(pair_->line, quoted(pair_->value) + " as " + what, "a number with a decimal point",
            "correct it or export it again");
    // a number with a fault stands, so that the entity is not told as lacking it
    if (!entity.number.emplace(pair_->code, value.value_or(0)).second)
      fault(pair_->line, what + " twice", "each group once", "export it again");
  }

  std::string name_;
  std::set<std::string> kinds_;
  const std::function<void(DxfEntity&&)>& take_;
  FaultList& faults_;
  DxfPairs pairs_;
  const DxfPair* pair_ = nullptr;
  DxfDrawing drawing_;
  std::string code_page_;
  bool done_ = false;
  bool any_entities_ = false;
};

}  // namespace

unsigned DxfEntity::flags(int code) const {
  const double value = this->value(code, 0);
  return value >= 0 && value < 65536 ? static_cast<unsigned>(value) : 0U;
}

DxfDrawing read_dxf(const SourceFile& source, const std::vector<std::string>& kinds,
                    const std::function<void(DxfEntity&&)>& take, FaultList& faults) {
  return Reading(source, kinds, take, faults).read();
}

}  // namespace squaredig::formats
