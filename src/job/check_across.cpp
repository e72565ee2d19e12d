#include "job/tables.h"

namespace squaredig::job {
namespace {

// Control points are named in several tables; the points themselves come from [control].
class ControlNames {
 public:
  ControlNames(const Job& job, Faults& faults) : job_(job), faults_(faults) {}

  void check(const std::string& name, const std::string& key) {
    if (job_.control || name.empty()) return;
    faults_.add(job_.place_of(key), key + " names " + quoted(name) + " but there is no [control]",
                "[control] with the points file that holds it", "add [control]");
  }

 private:
  const Job& job_;
  Faults& faults_;
};

void check_tank(const design::TankInput& tank, ControlNames& names) {
  if (tank.corner_a)
    if (const auto* name = std::get_if<std::string>(&*tank.corner_a))
      names.check(*name, "tank.corner_a");
  if (tank.corner_b) names.check(*tank.corner_b, "tank.corner_b");
  if (tank.from) {
    names.check(tank.from->line_from, "tank.from.line[1]");
    names.check(tank.from->line_to, "tank.from.line[2]");
  }
}

void check_pegs(const pegs::PegsInput& pegs, ControlNames& names) {
  for (std::size_t i = 0; i < pegs.stations.size(); ++i)
    names.check(pegs.stations[i], "pegs.stations[" + std::to_string(i + 1) + "]");
  if (pegs.backsight) names.check(*pegs.backsight, "pegs.backsight");
}

}  // namespace

void check_across(const Job& job, Faults& faults) {
  ControlNames names(job, faults);
  if (job.tank) check_tank(job.tank->settings, names);
  if (job.pegs) check_pegs(job.pegs->settings, names);
  if (job.laser && job.laser->mark) {
    names.check(job.laser->mark->mark, "laser.mark");
    names.check(job.laser->mark->check_mark, "laser.check_mark");
  }
}

}  // namespace squaredig::job
