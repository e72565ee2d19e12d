#include "design/influence.h"

#include "pegs/parts_internal.h"

namespace squaredig::pegs {

std::optional<design::Excavation> influence_pit(const Work& work, ground::Survey& survey,
                                                std::vector<Finding>& findings) {
  if (!work.input.site || !work.input.site->influence) return std::nullopt;
  auto found = design::influence_zone(work.design, work.pit, *work.input.site->influence,
                                      design::InfluenceFrom::Floor, survey);
  if (found.off_survey)
    findings.push_back({"influence-off-survey",
                        "The influence line, " + work.input.site->influence->words() +
                            " from the toe, runs out of the survey near " +
                            at_text(*found.off_survey) +
                            ": pegs are placed by offset and crest alone. Survey further out "
                            "there."});
  return std::move(found.zone);
}

}  // namespace squaredig::pegs
