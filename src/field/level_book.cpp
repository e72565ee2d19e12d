#include "field/level_book.h"

#include <cmath>

#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

std::string text(Length v) { return fixed(v.in_metres(), 4); }

Problem misplaced(const LevelLine& line, const std::string& found, const std::string& needed) {
  return {ProblemKind::Input, line.place, found + " on point " + quoted(line.point), needed,
          "correct the order of the rows, or fill in the missing reading"};
}

class Pages {
 public:
  std::vector<Run> read(std::span<const LevelLine> lines) {
    for (const LevelLine& line : lines) take(line);
    end();
    if (!problems_.empty()) throw Refusal(std::move(problems_));
    return std::move(runs_);
  }

 private:
  void take(const LevelLine& line) {
    if (line.foresight) fore(line);
    if (line.intermediate) between(line);
    if (line.backsight) back(line);
  }

  void back(const LevelLine& line) {
    const StaffReading reading{line.point, *line.backsight, line.place};
    if (open_ && !line.foresight) {
      // a row of its own for the backsight of a change point continues; else the page begins anew
      const Run& run = runs_.back();
      const bool goes_on = run.last() != nullptr && run.last()->point == line.point &&
                           run.last()->place.file == line.place.file;
      if (!goes_on) end();
    }
    if (!open_) begin(line);
    Stand stand;
    stand.back = reading;
    if (!line.foresight && line.distance) stand.distance = line.distance;
    runs_.back().stands.push_back(std::move(stand));
    runs_.back().page.sum_backsight += reading.reading;
    previous_ = reading.reading;
  }

  void begin(const LevelLine& line) {
    runs_.emplace_back();
    open_ = true;
    start_level_ = line.booked.reduced_level;
    level_ = Length{};
    booked_rise_less_fall_ = {};
    carried_ = {};
    steps_ = booked_steps_ = 0;
    check_collimation(line, Length{});
  }

  void between(const LevelLine& line) {
    if (!standing()) {
      problems_.push_back(misplaced(line, "an intermediate sight", "a backsight before it"));
      return;
    }
    Stand& stand = runs_.back().stands.back();
    stand.between.push_back({line.point, *line.intermediate, line.place});
    step(line, *line.intermediate);
  }

  void fore(const LevelLine& line) {
    if (!standing()) {
      problems_.push_back(misplaced(line, "a foresight", "a backsight before it"));
      return;
    }
    Stand& stand = runs_.back().stands.back();
    stand.fore = StaffReading{line.point, *line.foresight, line.place};
    if (line.distance)
      stand.distance = stand.distance ? *stand.distance + *line.distance : *line.distance;
    runs_.back().page.sum_foresight += *line.foresight;
    step(line, *line.foresight);
    if (line.backsight) check_collimation(line, level_);
  }

  bool standing() const {
    return open_ && !runs_.back().stands.empty() && !runs_.back().stands.back().fore;
  }

  // From the reading before to this one, as rise or fall; compared with what the book says.
  void step(const LevelLine& line, Length reading) {
    const Length rise = previous_ - reading;
    (rise < Length{} ? runs_.back().page.sum_fall : runs_.back().page.sum_rise) += abs(rise);
    level_ += rise;
    previous_ = reading;
    const Booked& b = line.booked;
    ++steps_;
    if (b.rise || b.fall) {
      const Length booked = b.rise.value_or(Length{}) - b.fall.value_or(Length{});
      booked_rise_less_fall_ += booked;
      ++booked_steps_;
      compare(line, "rise less fall", booked, rise);
    }
    if (b.reduced_level && start_level_)
      compare(line, "reduced level", *b.reduced_level - *start_level_, level_, start_level_);
  }

  void check_collimation(const LevelLine& line, Length level_here) {
    const Booked& b = line.booked;
    if (b.height_of_collimation && start_level_)
      compare(line, "height of collimation", *b.height_of_collimation - *start_level_,
              level_here + *line.backsight, start_level_);
  }

  void compare(const LevelLine& line, const char* what, Length booked, Length by_readings,
               std::optional<Elevation> above = std::nullopt) {
    constexpr double kRounding = 0.00051;  // metres: books are kept to a millimetre
    // a level worked out wrong carries into those after it: told is where the book departs
    const Length departs = booked - by_readings - (above ? carried_ : Length{});
    if (std::abs(departs.in_metres()) <= kRounding) return;
    if (above) carried_ += departs;
    const Length offset = above ? *above - Elevation{} : Length{};
    Run& run = runs_.back();
    run.page.agrees = false;
    run.findings.push_back({"page-check", line.place.file + ":" + std::to_string(line.place.line) +
                                              ": " + what + " of point " + quoted(line.point) +
                                              " is booked as " + text(booked + offset) +
                                              "; the readings give " + text(by_readings + offset)});
  }

  void end() {
    if (!open_) return;
    open_ = false;
    Run& run = runs_.back();
    // a backsight that nothing follows is no stand
    if (!run.stands.empty() && !run.stands.back().fore && run.stands.back().between.empty()) {
      problems_.push_back(
          {ProblemKind::Input, run.stands.back().back.place,
           "a backsight that no reading follows on point " + quoted(run.stands.back().back.point),
           "an intermediate sight or a foresight after it", "fill it in, or take out the row"});
    }
    run.page.last_less_first = level_;
    // a page that was worked out in part has no sum to compare; each of its rows has been compared
    if (steps_ > 0 && booked_steps_ == steps_)
      run.page.booked_rise_less_fall = booked_rise_less_fall_;
  }

  std::vector<Run> runs_;
  std::vector<Problem> problems_;
  bool open_ = false;
  Length previous_;
  Length level_;  // of the last reading's point, above the run's first
  std::optional<Elevation> start_level_;
  Length booked_rise_less_fall_;
  Length carried_;  // by the book's levels, from rows before that were worked out wrong
  std::size_t steps_ = 0, booked_steps_ = 0;
};

}  // namespace

std::vector<Run> open_level_book(std::span<const LevelLine> lines) { return Pages().read(lines); }

Length curvature_and_refraction(Length distance, Length radius, Ratio refraction) {
  return distance * ((1 - refraction.value()) * (distance / radius) / 2);
}

}  // namespace squaredig::field
