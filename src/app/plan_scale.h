// The grid a job is on, and the factor that makes grid lengths of the ground lengths in its file.
#pragma once

#include "app/job_folder.h"
#include "pegs/set_out.h"

namespace squaredig::app {

pegs::OnGrid grid_of(const job::Job& job);
// Sets plan_lengths and combined_factor; tells what was assumed.
void scale_plan(const job::Job& job, design::DesignInput& design,
                std::vector<std::string>& assumed);

}  // namespace squaredig::app
