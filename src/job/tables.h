// The tables of the job file, each read from the document into its place in the Job. A table the
// file does not have is left out. Faults go to the reader's faults, assumptions to the Job.
//
// Errors: faults, gathered.
// Source: docs/job-file.md.
#pragma once

#include "job/job.h"
#include "job/sides.h"

namespace squaredig::job {

void read_job_table(TableReader& root, Job& job);
void read_grid(TableReader& root, Job& job);
void read_control(TableReader& root, Job& job);
void read_field(TableReader& root, Job& job);
void read_ground(TableReader& root, Job& job);
void read_site(TableReader& root, Job& job);
void read_tank(TableReader& root, Job& job);
void read_bedding(TableReader& root, Job& job);
void read_pegs(TableReader& root, Job& job);
void read_dig(TableReader& root, Job& job);  // after the tank, whose sides it names
void read_progress(TableReader& root, Job& job);
void read_laser(TableReader& root, Job& job);
void read_base(TableReader& root, Job& job);
void read_fill(TableReader& root, Job& job);
void read_water(TableReader& root, Job& job);

// The sides of the job's tank; unknown where its outline is in a file.
Sides sides_of(const Job& job);

// A name and a points file; used by [progress] and by the layers of [fill].
NamedSurvey named_survey(TableReader& table);
// Tells two items of one list that have the same name.
void need_different_names(const std::vector<std::pair<std::string, Place>>& names, Faults& faults);

// What no table can tell alone: names that need control points, keys that need another table's.
void check_across(const Job& job, Faults& faults);

}  // namespace squaredig::job
