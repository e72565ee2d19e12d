#include "app/inputs.h"

#include <algorithm>

#include "app/parallel.h"
#include "app/plan_scale.h"
#include "app/refusals.h"
#include "design/tank.h"

namespace squaredig::app {
namespace {

using job::Stage;

FromFiles<PointTable> read_control(const JobFolder& job) {
  if (!job.job.control) return {};
  PointsAsked asked;
  asked.names = formats::Names::Unique;
  asked.heights = formats::Heights::Optional;
  return read_points(job, {job.job.control->points}, asked);
}

// With a window, points outside it are counted and not kept; strings are always kept whole.
FromFiles<ground::GroundInput> read_ground(const JobFolder& job, const PointTable* control,
                                           const std::optional<ground::Region>& window) {
  const job::GroundTable& table = *job.job.ground;
  FromFiles<ground::GroundInput> ground{table.settings};
  Refusals refusals;
  refusals.gather([&] {
    PointsAsked asked;
    asked.codes = table.codes;
    asked.control = control;
    asked.window = window;
    ground.value.points = ground.take(read_points(job, table.points, asked));
  });
  refusals.gather([&] {
    if (table.surface)
      ground.value.surface = ground.take(read_surface(job, *table.surface, control));
  });
  refusals.gather([&] {
    ground.value.breaklines =
        ground.take(read_strings(job, table.breaklines, formats::Heights::Needed, control));
  });
  refusals.gather([&] {
    if (table.outline)
      ground.value.outline =
          ground.take(read_strings(job, {*table.outline}, formats::Heights::Optional, control));
  });
  refusals.throw_if_any();
  return ground;
}

FromFiles<design::SiteInput> read_site(const JobFolder& job, const PointTable* control) {
  const job::SiteTable& table = *job.job.site;
  FromFiles<design::SiteInput> site{table.settings};
  Refusals refusals;
  refusals.gather([&] {
    site.value.keep_out =
        site.take(read_strings(job, table.keep_out, formats::Heights::Optional, control));
  });
  refusals.gather([&] {
    site.value.services =
        site.take(read_strings(job, table.services, formats::Heights::Needed, control));
  });
  refusals.throw_if_any();
  return site;
}

// The tank's outline from a strings file: one string, its vertices the corners A, B, C, ...
std::vector<GridPoint> outline_of(const std::vector<SurveyString>& strings,
                                  const job::FileSpec& file) {
  if (strings.size() != 1)
    refuse(file.place,
           squaredig::quoted(file.path) + " holds " + std::to_string(strings.size()) + " strings",
           "one string whose vertices are the tank's corners A, B, C, ...",
           "keep the tank's string alone in that file");
  std::vector<GridPoint> corners;
  for (const auto& vertex : strings[0].vertices) corners.push_back(vertex.at.at);
  if (corners.size() > 1 && corners.front() == corners.back()) corners.pop_back();
  return corners;
}

FromFiles<design::DesignInput> read_design(const JobFolder& job, const PointTable& control) {
  FromFiles<design::DesignInput> design;
  const job::TankTable& table = *job.job.tank;
  design.value.tank = table.settings;
  design.value.bedding = *job.job.bedding;
  design.value.pit = job.job.dig->pit;
  design.value.control = control;
  if (table.outline)
    design.value.tank.outline = outline_of(
        design.take(read_strings(job, {*table.outline}, formats::Heights::Optional, &control)),
        *table.outline);
  scale_plan(job.job, design.value, design.assumed);
  return design;
}

FromFiles<pegs::PegsInput> read_pegs(const JobFolder& job, const PointTable* control) {
  const job::PegsTable& table = *job.job.pegs;
  FromFiles<pegs::PegsInput> pegs{table.settings};
  pegs.value.laser = job.job.laser;
  PointsAsked asked;
  asked.names = formats::Names::Unique;
  asked.heights = formats::Heights::Optional;
  asked.control = control;
  Refusals refusals;
  refusals.gather([&] {
    if (table.as_set) pegs.value.as_set = pegs.take(read_points(job, {*table.as_set}, asked));
  });
  refusals.gather([&] {
    if (table.tape) pegs.value.tape = pegs.take(read_tape(job, *table.tape));
  });
  refusals.throw_if_any();
  return pegs;
}

FromFiles<dig::DigInput> read_dig(const JobFolder& job, const PointTable* control) {
  FromFiles<dig::DigInput> dig{job.job.dig->settings};
  dig.value.laser = job.job.laser;
  if (job.job.water) dig.value.water_level = job.job.water->level;
  Refusals refusals;
  for (const auto& survey : job.job.progress)
    refusals.gather([&] {
      PointsAsked asked;
      asked.control = control;
      dig::ProgressSurvey read;
      read.name = survey.name;
      read.points = dig.take(read_points(job, {survey.points}, asked));
      // surveyed as the ground was, unless a point says otherwise
      read.sigma_height = job.job.ground->settings.sigma_height;
      read.sigma_common = job.job.ground->settings.sigma_common;
      read.place = survey.place;
      dig.value.progress.push_back(std::move(read));
    });
  refusals.throw_if_any();
  return dig;
}

FromFiles<base::BaseInput> read_base(const JobFolder& job, const PointTable* control) {
  const job::BaseTable& table = *job.job.base;
  FromFiles<base::BaseInput> base{table.settings};
  PointsAsked asked;
  asked.control = control;
  Refusals refusals;
  refusals.gather([&] { base.value.points = base.take(read_points(job, table.points, asked)); });
  refusals.gather([&] {
    if (!table.after_repair.empty())
      base.value.after_repair = base.take(read_points(job, table.after_repair, asked));
  });
  refusals.gather([&] {
    if (!table.bedding_points.empty())
      base.value.bedding_points = base.take(read_points(job, table.bedding_points, asked));
  });
  refusals.gather([&] {
    if (table.tests) base.value.tests = base.take(read_compaction(job, *table.tests));
  });
  refusals.throw_if_any();
  return base;
}

FromFiles<fill::FillInput> read_fill(const JobFolder& job, const PointTable* control) {
  const job::FillTable& table = *job.job.fill;
  FromFiles<fill::FillInput> fill{table.settings};
  PointsAsked asked;
  asked.control = control;
  Refusals refusals;
  refusals.gather([&] {
    if (table.finish) fill.value.finish = fill.take(read_surface(job, *table.finish, control));
  });
  for (const auto& layer : table.layers)
    refusals.gather([&] {
      fill.value.layers.push_back(
          {layer.name, fill.take(read_points(job, {layer.points}, asked)), layer.place});
    });
  refusals.gather([&] {
    if (table.lift_log) fill.value.lift_log = fill.take(read_lift_log(job, *table.lift_log));
  });
  refusals.gather([&] {
    if (table.tests) fill.value.tests = fill.take(read_compaction(job, *table.tests));
  });
  refusals.throw_if_any();
  return fill;
}

template <class Value>
void tell(const FromFiles<Value>& from, ResultHead& head) {
  head.inputs.insert(head.inputs.end(), from.records.begin(), from.records.end());
  head.cautions.insert(head.cautions.end(), from.cautions.begin(), from.cautions.end());
  head.assumed.insert(head.assumed.end(), from.assumed.begin(), from.assumed.end());
}

template <class Value>
void tell(const std::optional<FromFiles<Value>>& from, ResultHead& head) {
  if (from) tell(*from, head);
}

// The field books come first: other tables may take the points reduced from them.
template <class Wanted>
void read_field(Inputs& inputs, Wanted wanted) {
  std::set<Stage> stages;
  for (const Stage stage : job::kStages)
    if (wanted(stage)) stages.insert(stage);
  const bool taken = asks_for_field(inputs.job.job, stages);
  if (!stages.contains(Stage::Field) && !taken) return;
  if (!inputs.job.job.field) return;
  inputs.field = read_field_books(inputs.job, inputs.control.value);
  if (taken) inputs.job.reduced = reduced_points(*inputs.field);
}

}  // namespace

bool Inputs::has(Stage stage) const {
  switch (stage) {
    case Stage::Field:
      return field.has_value();
    case Stage::Ground:
      return job.job.ground.has_value();
    case Stage::Pegs:
      return pegs.has_value();
    case Stage::Dig:
      return dig.has_value();
    case Stage::Base:
      return base.has_value();
    case Stage::Fill:
      return fill.has_value();
    case Stage::Record:
      return dig.has_value();
    default:
      return false;
  }
}

ResultHead Inputs::head(Stage stage) const {
  ResultHead head;
  head.job = job.job.job.name;
  head.inputs.push_back(job.record());
  head.assumed = job.job.assumed;
  head.cautions = job.job.cautions;
  tell(control, head);
  // the record comes from what every stage came from
  const auto from = [&](Stage other) { return stage == other || stage == Stage::Record; };
  if (from(Stage::Field)) tell(field, head);
  if (stage == Stage::Field) return head;
  tell(ground, head);
  if (stage == Stage::Ground) return head;
  tell(design, head);
  if (from(Stage::Pegs) || stage == Stage::Dig) tell(site, head);
  if (from(Stage::Pegs)) tell(pegs, head);
  if (from(Stage::Dig)) tell(dig, head);
  if (from(Stage::Base)) tell(base, head);
  if (from(Stage::Fill)) tell(fill, head);
  return head;
}

ground::GroundInput ground_in(const Inputs& inputs, const ground::Region& window) {
  if (inputs.ground_window) {
    const auto& control = inputs.control.value;
    return read_ground(inputs.job, control.empty() ? nullptr : &control, window).value;
  }
  const ground::GroundInput& all = inputs.ground.value;
  ground::GroundInput part{{},
                           all.breaklines,
                           all.outline,
                           all.surface,
                           all.longest_edge,
                           all.sigma_height,
                           all.sigma_common};
  part.points.files = all.points.files;
  for (std::size_t i = 0; i < all.points.size(); ++i)
    if (const SurveyPoint& point = all.points.points[i]; holds(window, point.at.at))
      part.points.add(point, all.points.label(i), all.points.code(i));
  return part;
}

ground::Region window_round(const FromFiles<design::DesignInput>& design) {
  constexpr Length kRound = Length::metres(60);
  formats::Extent extent;
  for (const GridPoint corner : design::place_tank(design.value).corners) extent.add(corner);
  return {{extent.low().easting - kRound, extent.low().northing - kRound},
          {extent.high().easting + kRound, extent.high().northing + kRound}};
}

Inputs read_inputs(const JobFolder& job, const std::set<Stage>& stages) {
  Refusals refusals;
  for (const Stage stage : stages) refusals.add(job::missing_for(stage, job.job));
  refusals.throw_if_any();
  Inputs inputs{job, read_control(job), {}, {}, {}, {}, {}, {}, {}, {}};
  const PointTable* control = inputs.control.value.empty() ? nullptr : &inputs.control.value;
  // the record tells of every stage that the job names
  const auto wanted = [&](Stage stage) {
    return stages.contains(stage) ||
           (stages.contains(Stage::Record) && job::missing_for(stage, job.job).empty());
  };
  const bool pegs = wanted(Stage::Pegs);
  const bool dig = wanted(Stage::Dig) || stages.contains(Stage::Record);
  const bool base = wanted(Stage::Base);
  const bool fill = wanted(Stage::Fill);
  read_field(inputs, wanted);
  const JobFolder& with = inputs.job;
  if (pegs || dig || base || fill)
    refusals.gather([&] { inputs.design = read_design(job, inputs.control.value); });
  // the ground stage examines every point; the others need the ground round the pit alone
  if (inputs.design && !stages.contains(Stage::Ground) && !job.job.ground->surface)
    refusals.gather([&] { inputs.ground_window = window_round(*inputs.design); });
  Works works;
  if (std::any_of(stages.begin(), stages.end(), [](Stage s) { return s != Stage::Field; }))
    works.push_back([&] { inputs.ground = read_ground(with, control, inputs.ground_window); });
  if (job.job.site && (pegs || dig))
    works.push_back([&] { inputs.site = read_site(job, control); });
  if (pegs) works.push_back([&] { inputs.pegs = read_pegs(with, control); });
  if (dig) works.push_back([&] { inputs.dig = read_dig(with, control); });
  if (base) works.push_back([&] { inputs.base = read_base(with, control); });
  if (fill) works.push_back([&] { inputs.fill = read_fill(with, control); });
  refusals.add(run_in_parallel(works, job.threads));
  refusals.throw_if_any();
  if (inputs.site && inputs.pegs) inputs.pegs->value.site = inputs.site->value;
  if (inputs.site && inputs.dig) inputs.dig->value.site = inputs.site->value;
  return inputs;
}

}  // namespace squaredig::app
