#include "app/survey_readers.h"

#include <algorithm>

#include "formats/dxf_read.h"
#include "formats/geojson_read.h"
#include "formats/geopackage_read.h"
#include "formats/landxml_read.h"
#include "formats/las_read.h"
#include "formats/raster_read.h"

namespace squaredig::app {
namespace {

template <class Read>
struct Reader {
  std::vector<const char*> endings;
  Read read;
};
using ReadPoints = formats::PointsFile (*)(const formats::SourceFile&, const formats::PointsWanted&,
                                           PointTable);
using ReadStrings = formats::StringsFile (*)(const formats::SourceFile&, formats::Heights);
using ReadSurface = formats::SurfaceFile (*)(const formats::SourceFile&);

const std::vector<Reader<ReadPoints>> kPoints = {
    {{".csv", ".txt"}, formats::read_points_csv},
    {{".xml"}, formats::read_landxml_points},
    {{".las", ".laz"}, formats::read_las_points},
    {{".dxf"}, formats::read_dxf_points},
    {{".geojson", ".json"}, formats::read_geojson_points},
    {{".gpkg"}, formats::read_geopackage_points},
    {{".tif", ".tiff"}, formats::read_geotiff_points},
    {{".asc"}, formats::read_ascii_grid_points}};

const std::vector<Reader<ReadStrings>> kStrings = {
    {{".csv", ".txt"}, formats::read_strings_csv},
    {{".xml"}, formats::read_landxml_breaklines},
    {{".dxf"}, formats::read_dxf_strings},
    {{".geojson", ".json"}, formats::read_geojson_strings},
    {{".gpkg"}, formats::read_geopackage_strings}};

formats::SurfaceFile read_landxml(const formats::SourceFile& source) {
  return formats::read_landxml_surface(source, source.surface);
}
const std::vector<Reader<ReadSurface>> kSurfaces = {{{".xml"}, read_landxml},
                                                    {{".dxf"}, formats::read_dxf_surface}};

template <class Read>
Read reader_of(const std::vector<Reader<Read>>& readers, const job::FileSpec& file,
               const std::string& what) {
  std::vector<std::string> endings;
  for (const auto& reader : readers)
    endings.insert(endings.end(), reader.endings.begin(), reader.endings.end());
  const std::string ending = ending_of(file, endings, what);
  const auto takes = [&](const Reader<Read>& reader) {
    return std::find(reader.endings.begin(), reader.endings.end(), ending) != reader.endings.end();
  };
  return std::find_if(readers.begin(), readers.end(), takes)->read;
}

std::string joined(const std::vector<std::string>& words) {
  std::string text;
  for (const auto& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

}  // namespace

std::string ending_of(const job::FileSpec& file, const std::vector<std::string>& wanted,
                      const std::string& what) {
  std::string ending = std::filesystem::path(file.path).extension().string();
  for (char& c : ending)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  if (std::find(wanted.begin(), wanted.end(), ending) == wanted.end())
    refuse(file.place, squaredig::quoted(file.path) + " as " + what,
           "a file whose name ends in " + joined(wanted), "convert the file, or name another");
  return ending;
}

formats::PointsFile points_of_file(const job::FileSpec& file, const formats::SourceFile& source,
                                   const formats::PointsWanted& wanted, PointTable before) {
  return reader_of(kPoints, file, "points")(source, wanted, std::move(before));
}

formats::StringsFile strings_of_file(const job::FileSpec& file, const formats::SourceFile& source,
                                     formats::Heights heights) {
  return reader_of(kStrings, file, "strings")(source, heights);
}

formats::SurfaceFile surface_of_file(const job::FileSpec& file, const formats::SourceFile& source) {
  return reader_of(kSurfaces, file, "a surface")(source);
}

}  // namespace squaredig::app
