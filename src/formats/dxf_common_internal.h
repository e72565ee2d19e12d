// What the three readings of a drawing share.
#pragma once

#include <string>
#include <vector>

#include "formats/dxf_entities.h"
#include "formats/stated_crs.h"

namespace squaredig::formats {

// The drawing's unit; a fault where it is one that no survey is in, and the job does not say which
// is meant. What was taken instead is told.
StatedCrs crs_of(const DxfDrawing& drawing, const SourceFile& source, FaultList& faults,
                 std::vector<std::string>& assumed, std::vector<std::string>& cautions);
// Which kinds were not looked at: one caution.
void tell_passed_over(const DxfDrawing& drawing, const SourceFile& source,
                      std::vector<std::string>& cautions);
// A drawing without any of the wanted kinds is refused by what it has instead.
void refuse_without(const std::string& wanted, const std::string& needed, const DxfDrawing& drawing,
                    const SourceFile& source, FaultList& faults);
// The layers that were left out, where one is asked for. Refuses a layer that is not there.
class DxfLayers {
 public:
  explicit DxfLayers(const SourceFile& source) : source_(source) {}
  bool wants(const DxfEntity& entity);
  void finish(FaultList& faults) const;

 private:
  const SourceFile& source_;
  std::map<std::string, std::size_t> others_;
  bool found_ = false;
};

}  // namespace squaredig::formats
