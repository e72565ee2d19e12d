// Everything the stages asked for work from: the job, with its files read.
//
// What: one value per stage input, each with the records of the files it came from. Nothing is
//   computed here but what the tables leave to the control points.
// Errors: one Refusal with the faults of all files.
#pragma once

#include <optional>
#include <set>

#include "app/field_books.h"
#include "ground/survey.h"

namespace squaredig::app {

struct Inputs {
  JobFolder job;
  FromFiles<PointTable> control;
  FromFiles<ground::GroundInput> ground;
  std::optional<FromFiles<field::FieldInput>> field;
  std::optional<FromFiles<design::SiteInput>> site;
  std::optional<FromFiles<design::DesignInput>> design;
  std::optional<FromFiles<pegs::PegsInput>> pegs;
  std::optional<FromFiles<dig::DigInput>> dig;
  std::optional<FromFiles<base::BaseInput>> base;
  std::optional<FromFiles<fill::FillInput>> fill;
  std::optional<ground::Region> ground_window = {};  // what `ground` holds; nothing: everything

  bool has(job::Stage stage) const;
  // What a result of the stage says first: its inputs in the order of the job file, what was
  // assumed, and the cautions of its files.
  ResultHead head(job::Stage stage) const;
};

// The ground's points in a window, and its strings: read again or, where all were read, from there.
ground::GroundInput ground_in(const Inputs& inputs, const ground::Region& window);
// A first guess of the ground that the pit touches; the survey asks for more where it needs more.
ground::Region window_round(const FromFiles<design::DesignInput>& design);

// Reads what the stages need, with the job's threads. Refuses (with the job file's lines) where the
// job lacks a table.
Inputs read_inputs(const JobFolder& job, const std::set<job::Stage>& stages);

}  // namespace squaredig::app
