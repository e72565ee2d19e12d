// What the writers by GDAL share: files made in memory, quiet messages, refusals, reference
// systems.
#pragma once

#include <string>

class OGRSpatialReference;

namespace squaredig::formats {

// A file in memory, gone when this is. Messages of GDAL go into the Refusal, not to the standard
// error.
class MemoryFile {
 public:
  // `format` names the file in a refusal: "GeoTIFF".
  MemoryFile(std::string format, const std::string& ending);
  ~MemoryFile();
  MemoryFile(const MemoryFile&) = delete;
  MemoryFile& operator=(const MemoryFile&) = delete;

  const char* path() const { return path_.c_str(); }
  std::string bytes() const;
  [[noreturn]] void cannot(const std::string& what) const;

 private:
  std::string format_;
  std::string path_;
};

// "EPSG:2157", easting first. Refuses (with the job file's name) what PROJ does not know.
void set_epsg(OGRSpatialReference& system, const std::string& crs);

}  // namespace squaredig::formats
