// A survey of any size for the measurements of whole runs. Usage: made_survey POINTS FOLDER
//
// Writes ground.csv: one point to a square metre, jittered, to the millimetre, in an order that
// jumps over the whole area; breaklines.csv: strings of ten vertices, one vertex to a thousand
// points; job.toml: a tank of 24 by 9.6 m in the middle, three metres deep.
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <numeric>
#include <random>
#include <string>

#include "quantity/number_text.h"

namespace {

using squaredig::fixed;

constexpr double kEast = 300000, kNorth = 5800000;

double height(double x, double y) { return 60 + std::sin(x / 20) + std::cos(y / 30); }

void write_points(std::size_t side, const std::string& folder) {
  std::ofstream file(folder + "/ground.csv", std::ios::binary);
  file << "point,easting,northing,height,code\n";
  const std::size_t count = side * side;
  std::size_t step = count / 2 + count / 8 + 1;
  while (std::gcd(step, count) != 1) ++step;
  std::mt19937 random(7);
  const auto jitter = [&] { return static_cast<double>(random() % 900) / 1000; };
  std::string line;
  std::size_t at = 0;
  for (std::size_t i = 1; i <= count; ++i, at = (at + step) % count) {
    const double x = static_cast<double>(at % side) + jitter();
    const double y = static_cast<double>(at / side) + jitter();
    line = std::to_string(i);
    line += ',' + fixed(kEast + x, 3) + ',' + fixed(kNorth + y, 3) + ',' + fixed(height(x, y), 3);
    line += ",GL\n";
    file << line;
  }
}

void write_breaklines(std::size_t side, const std::string& folder) {
  std::ofstream file(folder + "/breaklines.csv", std::ios::binary);
  file << "string,easting,northing,height\n";
  std::mt19937 random(8);
  for (std::size_t s = 1; s <= side * side / 10000; ++s) {
    const auto range = static_cast<unsigned>(side - 12);
    const double x = 1 + static_cast<double>(random() % range);
    const double y = 1 + static_cast<double>(random() % range);
    for (int v = 0; v < 10; ++v)
      file << s << ',' << fixed(kEast + x + v + 0.0005, 4) << ','
           << fixed(kNorth + y + 0.3 * v + 0.0005, 4) << ',' << fixed(height(x + v, y + 0.3 * v), 3)
           << '\n';
  }
}

void write_job(std::size_t side, const std::string& folder) {
  const double middle = std::floor(static_cast<double>(side) / 2);
  const double floor = height(middle, middle) - 3;
  std::ofstream(folder + "/job.toml")
      << "[job]\nname = \"a survey made for measuring\"\nout = \"out\"\n"
         "[grid]\ncrs = \"EPSG:32633\"\nheights = \"local\"\n"
         "[ground]\npoints = [\"ground.csv\"]\nbreaklines = [\"breaklines.csv\"]\n"
         "longest_edge = 30.0\nsigma_height_mm = 15.0\nsigma_common_mm = 5.0\n"
         "[tank]\nlength = 24.0\nwidth = 9.6\nheight = 1.32\nbearing_ab = 37.5\n"
         "fall_percent = 0.5\nfall_bearing = 127.5\ncorner_a = ["
      << fixed(kEast + middle, 3) << ", " << fixed(kNorth + middle, 3)
      << "]\nunderside_level = " << fixed(floor, 3)
      << "\n[bedding]\nthickness_mm = 20.0\nleast_mm = 15.0\nmost_mm = 30.0\n"
         "[pegs]\noffset = 5.0\nsetback = 1.0\ntolerance_mm = 10.0\nside_tolerance_mm = 10.0\n"
         "diagonal_tolerance_mm = 10.0\n"
         "[dig]\ngap = 0.2\nbatter = \"1:1\"\nbatter_given_by = \"an invented report\"\n"
         "cell = 1.0\nvertical_caution_depth = 1.5\n";
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  const double points = std::atof(argv[1]);
  const auto side = static_cast<std::size_t>(std::lround(std::sqrt(points)));
  if (side < 100) return 2;
  write_points(side, argv[2]);
  write_breaklines(side, argv[2]);
  write_job(side, argv[2]);
  return 0;
}
