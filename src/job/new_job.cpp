#include "job/new_job.h"

#include "job/job_template.h"

namespace squaredig::job {

std::vector<NewFile> new_job_files() {
  const std::string points = "point,easting,northing,height,code\n";
  return {
      {"job.toml", std::string(kTemplateOfDesign) + std::string(kTemplateOfLater)},
      {"control.csv",
       "# Control points. Metres on the job's grid; leave the height empty where there is none.\n" +
           points},
      {"ground.csv", "# Points on the existing ground, one a line, in metres.\n" + points},
      {"breaklines.csv",
       "# Kerbs, tops and toes of slopes: the points of one string in order, one a line.\n"
       "string,easting,northing,height\n"},
      {"as-set.csv",
       "# Pegs as measured, named as in the peg schedule: A1, A2, ... or A, B, ... in metres.\n" +
           points},
      {"tape.csv",
       "# Taped sides and diagonals. Height difference: second peg above the first, or empty.\n"
       "from,to,length,height_difference\n"},
      {"as-dug.csv",
       "# The dug base. Code BASE on the base, TOE on its edge, or as the job file says.\n" +
           points},
  };
}

}  // namespace squaredig::job
