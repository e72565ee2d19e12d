// The field books a job names, read; and the points reduced from them, for the stages that ask for
// "field" where a points file could stand.
//
// Errors: one Refusal with the faults of all books; those of the reduction itself.
#pragma once

#include <memory>
#include <set>

#include "app/field_files.h"
#include "field/reduce.h"

namespace squaredig::app {

// Where a job writes this instead of a file's name, the reduced points are meant.
inline constexpr const char* kFieldPoints = "field";

FromFiles<field::FieldInput> read_field_books(const JobFolder& job, const PointTable& control);

// The reduced points as other stages take them: the records of the books stand for the file, and
// what needs a person is a caution.
struct ReducedField {
  field::FieldResult result;
  FromFiles<PointTable> points;
};
std::shared_ptr<const ReducedField> reduced_points(const FromFiles<field::FieldInput>& books);

// Those that are asked for, added to the points of `before`: by code, or with Names::Unique those
// that are named like pegs and corners. Points without the height that is needed are left out, and
// told.
FromFiles<PointTable> points_of(const ReducedField& field, const PointsAsked& asked,
                                PointTable before);

// True where a table of a stage among `stages` takes the reduced points.
bool asks_for_field(const job::Job& job, const std::set<job::Stage>& stages);

}  // namespace squaredig::app
