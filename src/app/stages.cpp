#include "app/stages.h"

#include <algorithm>

#include "app/parallel.h"
#include "app/plan_scale.h"
#include "app/stage_files.h"
#include "app/stage_sheets.h"
#include "base/check_base.h"
#include "dig/dig.h"
#include "fill/fill.h"
#include "ground/examine.h"
#include "pegs/set_out.h"
#include "record/record.h"

namespace squaredig::app {
namespace {

using job::Stage;

// What the run knows of a result's origin, in front of what the stage itself has to say.
ResultHead joined(ResultHead head, const ResultHead& of_stage) {
  const auto add = [](auto& to, const auto& from) {
    to.insert(to.end(), from.begin(), from.end());
  };
  add(head.assumed, of_stage.assumed);
  add(head.cautions, of_stage.cautions);
  add(head.findings, of_stage.findings);
  return head;
}

InputRecord* record_of(ResultHead& head, const std::string& file) {
  for (auto& record : head.inputs)
    if (record.file == file) return &record;
  return nullptr;
}

// Rows that were read and then took no part.
void set_aside(ResultHead& head, const std::string& file, int line, std::string why) {
  InputRecord* record = record_of(head, file);
  if (record == nullptr) return;
  record->set_aside.push_back({line, std::move(why)});
  record->used -= record->used > 0 ? 1 : 0;
}

void in_file_order(ResultHead& head) {
  for (auto& record : head.inputs)
    std::stable_sort(record.set_aside.begin(), record.set_aside.end(),
                     [](const auto& a, const auto& b) { return a.line < b.line; });
}

ExitStatus status_of(const ResultHead& head) {
  return head.findings.empty() ? ExitStatus::Done : ExitStatus::NeedsAPerson;
}

ExitStatus status_of(Verdict verdict) {
  return verdict == Verdict::DoesNotConform || verdict == Verdict::NotProven
             ? ExitStatus::NeedsAPerson
             : ExitStatus::Done;
}

std::string code_of(const std::optional<int>& epsg) {
  return epsg ? "EPSG:" + std::to_string(*epsg) : "local";
}

FileContext context_of(const job::Job& job) {
  FileContext context{job.job.date,
                      "local",
                      "local",
                      job.job.revision.value_or(""),
                      job.job.drawing.value_or(""),
                      job.job.prepared_by.value_or("")};
  if (job.grid) context.crs = code_of(job.grid->crs);
  if (job.grid) context.heights = code_of(job.grid->heights);
  return context;
}

template <class Result>
StageOutput output(Stage stage, const Result& result, const Inputs& inputs) {
  StageOutput out;
  out.stage = stage;
  out.status = status_of(result.head);
  const FileContext context = context_of(inputs.job.job);
  out.files = files_of(result, context);
  if constexpr (requires { sheets_of(result, context); })  // those that need nothing else
    out.files.merge(sheets_of(result, context));
  out.json = out.files.at(std::string(job::words(stage)) + ".json");
  out.summary = summary_of(result);
  out.remarks = remarks_of(result.head);
  return out;
}

// What the strings the pit is taped from depend on, and nothing else of the table.
pegs::PegsInput strings_alone(const Inputs& inputs) {
  pegs::PegsInput input = inputs.job.job.pegs->settings;
  input.stations.clear();
  input.backsight.reset();
  if (inputs.site) input.site = inputs.site->value;
  return input;
}

// The middle of what was surveyed, for a ground without a tank.
GridPosition middle_of(const ground::GroundInput& input) {
  formats::Extent extent;
  for (const auto& point : input.points.points) extent.add(point.at.at);
  if (input.surface)
    for (const auto& vertex : input.surface->vertices) extent.add(vertex.at);
  if (extent.empty()) return {};
  const Elevation height =
      input.points.empty() ? input.surface->vertices[0].height : input.points.points[0].at.height;
  return {extent.middle(), height};
}

}  // namespace

geometry::SiteFrame Stages::frame() const {
  if (!inputs_.design) return geometry::SiteFrame::around(middle_of(inputs_.ground.value));
  const design::Tank tank = design::place_tank(inputs_.design->value);
  return geometry::SiteFrame::around({tank.corners[0], tank.underside.level});
}

ground::WholeSurvey& Stages::whole_survey() {
  const std::scoped_lock lock(building_);
  if (!whole_) {
    progress_.step("building the ground");
    whole_ = std::make_unique<ground::WholeSurvey>(inputs_.ground.value, frame());
  }
  return *whole_;
}

// As much as the pit needs, the same as the whole to the last bit; the whole where it is needed or
// given as a surface. So the pit does not wait for the whole.
ground::Survey& Stages::survey() {
  if (inputs_.ground.value.surface) return whole_survey();
  if (!window_) {
    progress_.step("building the ground round the pit");
    const bool all_read = !inputs_.ground_window;
    const auto window = all_read ? window_round(*inputs_.design) : *inputs_.ground_window;
    const auto& extent = inputs_.ground.extent;
    const auto whole = [this]() -> const ground::GroundSurface& {
      return whole_survey().built().ground;
    };
    window_ = std::make_unique<ground::WindowedSurvey>(
        all_read ? ground_in(inputs_, window) : inputs_.ground.value, window,
        ground::Region{extent.low(), extent.high()},
        [this](const ground::Region& wider) { return ground_in(inputs_, wider); }, frame(),
        all_read ? ground::WholeGround(whole) : nullptr);
  }
  return *window_;
}

const design::Excavation& Stages::excavation() {
  if (!excavation_) {
    ground::Survey& ground = survey();
    progress_.step("cutting the pit");
    excavation_ =
        std::make_unique<design::Excavation>(design::excavate(inputs_.design->value, ground));
  }
  return *excavation_;
}

// The whole ground is built and examined beside the other stages. They need it too where the pit's
// ground is not certain without: where there is no whole, nothing is said of them.
void Stages::run_all(const std::set<Stage>& stages) {
  std::vector<Problem> of_ground, of_others;
  StageOutput ground;
  Works works;
  const bool whole = stages.contains(Stage::Ground);
  if (whole) works.push_back([&] { of_ground = problems_of([&] { ground = run_ground(); }); });
  works.push_back([&] {
    of_others = problems_of([&] {
      for (const Stage stage : stages)
        if (stage != Stage::Ground) run(stage);
      if (whole) progress_.step("building and examining the ground");  // which goes on
    });
  });
  together(threads_)(works);
  for (const auto& problems : {of_ground, of_others})
    if (!problems.empty()) throw Refusal(problems);
  if (whole) done_.emplace(Stage::Ground, std::move(ground));
}

StageOutput Stages::take(Stage stage) {
  StageOutput out = std::move(done_.at(stage));
  if (stage == Stage::Ground) {
    out.large_files["ground.xml"] = ground_xml(
        *examined_, ground::mesh_of(std::move(*whole_).ground()), context_of(inputs_.job.job));
    whole_.reset();
    examined_.reset();
  }
  return out;
}

const StageOutput& Stages::run(Stage stage) {
  if (const auto found = done_.find(stage); found != done_.end()) return found->second;
  return done_.emplace(stage, made(stage)).first->second;
}

StageOutput Stages::made(Stage stage) {
  switch (stage) {
    case Stage::Field:
      return run_field();
    case Stage::Pegs:
      return run_pegs();
    case Stage::Dig:
      return run_dig();
    case Stage::Base:
      return run_base();
    case Stage::Fill:
      return run_fill();
    default:
      return run_record();
  }
}

StageOutput Stages::run_field() {
  progress_.step("reducing the field books");
  const JobFolder& job = inputs_.job;
  field::FieldResult result =
      job.reduced ? job.reduced->result : field::reduce(inputs_.field->value, {});
  result.head = joined(inputs_.head(Stage::Field), result.head);
  std::vector<field::PointWithheld> rows = result.withheld;
  if (result.gnss)
    for (const auto& row : result.gnss->left_out)
      if (std::none_of(rows.begin(), rows.end(),
                       [&](const auto& r) { return r.place == row.place; }))
        rows.push_back(row);
  for (const auto& row : rows)
    set_aside(result.head, row.place.file, row.place.line, row.point + ": " + row.why);
  in_file_order(result.head);
  return output(Stage::Field, result, inputs_);
}

StageOutput Stages::run_ground() {
  const auto& built = whole_survey().built();
  progress_.step("examining the ground");
  ground::GroundResult result = ground::examine(inputs_.ground.value, built, together(threads_));
  ResultHead head = inputs_.head(Stage::Ground);
  for (const auto& examined : result.head.inputs)
    for (const auto& row : examined.set_aside) set_aside(head, examined.file, row.line, row.why);
  result.head = joined(std::move(head), result.head);
  in_file_order(result.head);
  StageOutput out = output(Stage::Ground, result, inputs_);
  examined_ = std::move(result);
  return out;
}

StageOutput Stages::run_pegs() {
  const design::Excavation& pit = excavation();
  progress_.step("setting out the pegs");
  auto result = pegs::set_out(inputs_.pegs->value, inputs_.design->value, pit, survey(),
                              grid_of(inputs_.job.job));
  result.head = joined(inputs_.head(Stage::Pegs), result.head);
  StageOutput out = output(Stage::Pegs, result, inputs_);
  if (result.as_set) out.status = worse(out.status, status_of(result.as_set->verdict));
  if (result.tape) out.status = worse(out.status, status_of(result.tape->verdict));
  results_.pegs = std::move(result);
  return out;
}

StageOutput Stages::run_dig() {
  const design::Excavation& pit = excavation();
  progress_.step("measuring the cut");
  auto result = dig::dig(inputs_.dig->value, inputs_.design->value, pit, survey());
  result.head = joined(inputs_.head(Stage::Dig), result.head);
  const auto strings = pegs::set_out(strings_alone(inputs_), inputs_.design->value, pit, survey(),
                                     grid_of(inputs_.job.job));
  StageOutput out = output(Stage::Dig, result, inputs_);
  progress_.step("drawing the dig sheet");
  out.files.merge(sheets_of(result, strings, context_of(inputs_.job.job)));
  out.files.merge(dig_map(result, strings.reference, context_of(inputs_.job.job)));
  results_.dig = std::move(result);
  return out;
}

StageOutput Stages::run_base() {
  const design::DesignInput& design = inputs_.design->value;
  const design::Excavation& pit = excavation();
  progress_.step("checking the base");
  base::PlannedBase planned{pit.tank,
                            {},
                            design.bedding.thickness,
                            design.bedding.least,
                            design.bedding.most,
                            design::gaps_of(design.pit, pit.tank),
                            design.tank.module};
  for (const auto& corner : pit.toe) planned.toe.push_back(corner.at);
  for (const auto& pipe : design.tank.pipes) planned.inverts.push_back({pipe.name, pipe.invert});
  for (auto& gap : planned.gap) gap = gap * design.combined_factor.value();
  auto result = base::check_base(inputs_.base->value, planned);
  result.head = joined(inputs_.head(Stage::Base), result.head);
  for (const auto& point : result.aside)
    set_aside(result.head, point.place.file, point.place.line, point.point + ": " + point.why);
  in_file_order(result.head);
  StageOutput out = output(Stage::Base, result, inputs_);
  out.status = worse(out.status, status_of(result.verdict));
  results_.base = std::move(result);
  return out;
}

StageOutput Stages::run_fill() {
  const design::Excavation& pit = excavation();
  progress_.step("measuring the fill");
  const auto& job = inputs_.job.job;
  auto result = fill::fill(
      inputs_.fill->value,
      {inputs_.design->value, pit, job.dig->settings.bulking, job.water ? &*job.water : nullptr});
  result.head = joined(inputs_.head(Stage::Fill), result.head);
  StageOutput out = output(Stage::Fill, result, inputs_);
  results_.fill = std::move(result);
  return out;
}

StageOutput Stages::run_record() {
  ExitStatus status = ExitStatus::Done;
  for (const Stage stage : {Stage::Pegs, Stage::Dig, Stage::Base, Stage::Fill})
    if (inputs_.has(stage)) status = worse(status, run(stage).status);
  progress_.step("writing the record");
  const auto& job = inputs_.job.job.job;
  const auto found = [](const auto& result) { return result ? &*result : nullptr; };
  auto result = record::record({job.date, job.revision, job.drawing, job.prepared_by},
                               {inputs_.design->value, found(results_.pegs), found(results_.dig),
                                found(results_.base), found(results_.fill)});
  result.head = joined(inputs_.head(Stage::Record), result.head);
  StageOutput out = output(Stage::Record, result, inputs_);
  out.status = worse(out.status, status);
  out.files.merge(record_map(result, results_, context_of(inputs_.job.job)));
  out.files.merge(sheets_of(report::RecordBook{result, found(results_.pegs), found(results_.dig),
                                               found(results_.base), found(results_.fill)},
                            context_of(inputs_.job.job)));
  return out;
}

std::set<Stage> stages_named(const job::Job& job) {
  std::set<Stage> named;
  for (const Stage stage : {Stage::Field, Stage::Ground, Stage::Pegs, Stage::Dig, Stage::Base,
                            Stage::Fill, Stage::Record})
    if (job::missing_for(stage, job).empty()) named.insert(stage);
  return named;
}

}  // namespace squaredig::app
