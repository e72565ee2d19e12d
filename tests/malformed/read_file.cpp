// read_file ROLE FILE [units=ft] [codes=2]: what the readers make of one file, as points, strings
// or a surface, with what a job may say of it.
//
// Taken: one line with how much was read and used and between which coordinates it lies; refused:
// its lines, and exit status 2; a disk that cannot be read: 3.
#include <cstdio>
#include <limits>

#include "app/survey_readers.h"
#include "quantity/number_text.h"

namespace squaredig {
namespace {

class Range {
 public:
  void add(double value) {
    low_ = value < low_ ? value : low_;
    high_ = value > high_ ? value : high_;
  }
  std::string text() const {
    return low_ > high_ ? "none" : shortest(low_) + ".." + shortest(high_);
  }

 private:
  double low_ = std::numeric_limits<double>::infinity();
  double high_ = -std::numeric_limits<double>::infinity();
};

class Box {
 public:
  void add(const GridPosition& p, bool has_height) {
    east_.add(p.at.easting.in_metres());
    north_.add(p.at.northing.in_metres());
    if (has_height) height_.add(p.height.in_metres());
  }
  std::string text() const {
    return "east " + east_.text() + " north " + north_.text() + " height " + height_.text();
  }

 private:
  Range east_, north_, height_;
};

template <class File>
std::string taken(const File& file, const std::string& how_many, const Box& box) {
  return "read " + std::to_string(file.record.read) + " used " + std::to_string(file.record.used) +
         " " + how_many + " " + box.text() + "\n";
}

void say(const std::string& word, formats::SourceFile& source) {
  const auto equals = word.find('=');
  const std::string key = word.substr(0, equals), value = word.substr(equals + 1);
  if (key == "codes") source.codes = {value};
  if (key == "units")
    source.unit = value == "ft"      ? formats::LengthUnit::Foot
                  : value == "us-ft" ? formats::LengthUnit::UsSurveyFoot
                                     : formats::LengthUnit::Metre;
}

std::string read(const std::string& role, const std::string& path,
                 const std::vector<std::string>& words) {
  job::FileSpec spec;
  spec.path = path;
  spec.place = {"job.toml"};
  formats::SourceFile source;
  source.path = path;
  source.name = path.substr(path.rfind('/') + 1);
  source.grid = formats::GridWanted{};  // a local grid: any projected system is taken, and told
  for (const auto& word : words) say(word, source);
  Box box;
  if (role == "points") {
    const auto file = app::points_of_file(spec, source, {}, {});
    for (const auto& p : file.points.points) box.add(p.at, p.has_height);
    return taken(file, "points " + std::to_string(file.points.size()), box);
  }
  if (role == "strings") {
    const auto file = app::strings_of_file(spec, source, formats::Heights::Needed);
    for (const auto& string : file.strings)
      for (const auto& v : string.vertices) box.add(v.at, v.has_height);
    return taken(file, "strings " + std::to_string(file.strings.size()), box);
  }
  const auto file = app::surface_of_file(spec, source);
  for (const auto& v : file.mesh.vertices) box.add(v, true);
  return taken(file, "faces " + std::to_string(file.mesh.faces.size()), box);
}

}  // namespace
}  // namespace squaredig

int main(int argc, char** argv) {
  if (argc < 3) return 1;
  try {
    std::fputs(squaredig::read(argv[1], argv[2], {argv + 3, argv + argc}).c_str(), stdout);
    return 0;
  } catch (const squaredig::Refusal& refusal) {
    bool storage = false;
    for (const auto& problem : refusal.problems()) {
      std::fputs((problem.text() + "\n").c_str(), stdout);
      storage = storage || problem.kind == squaredig::ProblemKind::Storage;
    }
    return storage ? 3 : 2;
  }
}
