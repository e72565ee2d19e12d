// GDAL kept quiet and at home: it says nothing by itself, writes no files beside those it reads,
// and looks at no other file for what one lacks.
#pragma once

#include <cpl_conv.h>
#include <cpl_error.h>

namespace squaredig::formats {

class GdalAtHome {
 public:
  GdalAtHome() {
    CPLPushErrorHandler(CPLQuietErrorHandler);
    CPLErrorReset();
    CPLSetThreadLocalConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "EMPTY_DIR");
    CPLSetThreadLocalConfigOption("GDAL_PAM_ENABLED", "NO");
  }
  ~GdalAtHome() {
    CPLSetThreadLocalConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", nullptr);
    CPLSetThreadLocalConfigOption("GDAL_PAM_ENABLED", nullptr);
    CPLPopErrorHandler();
  }
  GdalAtHome(const GdalAtHome&) = delete;
  GdalAtHome& operator=(const GdalAtHome&) = delete;
};

}  // namespace squaredig::formats
