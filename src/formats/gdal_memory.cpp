#include <cpl_error.h>
#include <cpl_vsi.h>
#include <ogr_spatialref.h>

#include "formats/gdal_memory_internal.h"
#include "quantity/problem.h"

namespace squaredig::formats {

MemoryFile::MemoryFile(std::string format, const std::string& ending)
    : format_(std::move(format)), path_("/vsimem/squaredig." + ending) {
  CPLPushErrorHandler(CPLQuietErrorHandler);
}

MemoryFile::~MemoryFile() {
  VSIUnlink(path());
  CPLPopErrorHandler();
}

std::string MemoryFile::bytes() const {
  vsi_l_offset size = 0;
  const GByte* bytes = VSIGetMemFileBuffer(path(), &size, FALSE);
  if (bytes == nullptr) cannot("the file is not there");
  return {reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size)};
}

void MemoryFile::cannot(const std::string& what) const {
  throw Refusal(Problem{ProblemKind::Storage,
                        {format_},
                        what + ": " + CPLGetLastErrorMsg(),
                        "a working GDAL",
                        "check the installation of GDAL and PROJ"});
}

void set_epsg(OGRSpatialReference& system, const std::string& crs) {
  system.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  if (system.SetFromUserInput(crs.c_str()) != OGRERR_NONE)
    refuse({"job.toml"}, "the CRS " + squaredig::quoted(crs), "an EPSG code that PROJ knows",
           "correct crs, or use \"local\"");
}

}  // namespace squaredig::formats
