#include "field/gnss.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "adjust/distributions.h"
#include "field/geoid.h"
#include "geodesy/operation.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

std::string where(const Place& place) { return place.file + ":" + std::to_string(place.line); }
std::string mm(double metres) { return fixed(metres * 1000, 1) + " mm"; }

enum class Fix { Fixed, NotFixed, Unknown };

Fix fix_of(std::string said) {
  for (char& c : said)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  for (const char* word : {"4", "fixed", "fix", "rtk fixed", "rtk fix", "rtk"})
    if (said == word) return Fix::Fixed;
  for (const char* word : {"0", "1", "2", "3", "5", "6", "7", "8", "float", "rtk float", "single",
                           "autonomous", "dgps", "dgnss", "sbas", "none", "invalid", "code"})
    if (said == word) return Fix::NotFixed;
  return Fix::Unknown;
}

// One position on the grid.
struct Occupied {
  const GeodeticPoint* from;
  double e, n, h;  // less the first one's, in metres
};

class GnssReducer {
 public:
  GnssReducer(const FieldInput& input, ResultHead& head) : input_(input), head_(head) {
    if (!input.crs)
      refuse(input.place, "GNSS positions in a job whose grid is local",
             "a projected grid: [grid] crs", "name the grid, or take gnss out of [field]");
    if (input.geoid) examine(*input.geoid);
  }

  GnssReduced reduce() {
    const geodesy::Grid grid = geodesy::Grid::open(*input_.crs, input_.place);
    choose_operation(grid);
    out_.heights_are_ellipsoidal = !input_.geoid;
    for (const auto& [name, rows] : grouped()) {
      std::vector<Occupied> seen;
      const std::size_t before = out_.told.left_out.size();
      for (const GeodeticPoint* p : rows)
        if (fixed_solution(*p)) seen.push_back(occupied(*p));
      if (seen.empty())
        out_.withheld.push_back(out_.told.left_out[before]);
      else
        average(name, seen);
    }
    if (!problems_.empty()) throw Refusal(std::move(problems_));
    return std::move(out_);
  }

 private:
  void choose_operation(const geodesy::Grid& grid) {
    const std::string from = input_.gnss_crs.value_or(grid.geographic_code());
    const GeodeticPoint& first = input_.gnss.front();
    operation_.emplace(geodesy::Operation::best(
        from, *input_.crs, {first.latitude, first.longitude}, input_.place, input_.gnss_year));
    const geodesy::OperationUsed& used = operation_->used();
    out_.told.operation = used.name;
    out_.told.accuracy = used.accuracy;
    out_.told.software = used.software;
    out_.told.grid_files = used.grid_files;
    if (input_.geoid) out_.told.geoid = input_.geoid->file;
    if (!input_.gnss_crs)
      head_.assumed.push_back("GNSS latitudes and longitudes are in the grid's own datum (" + from +
                              "), as [field] gnss_crs does not say");
    else if (used.accuracy > Length{})
      head_.cautions.push_back("GNSS: " + used.name + " is good to " +
                               shortest(used.accuracy.in_metres()) +
                               " m; ellipsoid heights are taken as they stand");
    if (input_.geoid && input_.heights)
      head_.assumed.push_back("the geoid file " + quoted(input_.geoid->file) +
                              " leads to the job's heights, " + *input_.heights);
  }

  std::vector<std::pair<std::string, std::vector<const GeodeticPoint*>>> grouped() const {
    std::vector<std::pair<std::string, std::vector<const GeodeticPoint*>>> groups;
    std::map<std::string, std::size_t> at;
    for (const GeodeticPoint& p : input_.gnss) {
      const auto [number, fresh] = at.try_emplace(p.point, groups.size());
      if (fresh) groups.push_back({p.point, {}});
      groups[number->second].second.push_back(&p);
    }
    return groups;
  }

  bool fixed_solution(const GeodeticPoint& p) {
    if (p.fix.empty()) return true;
    const Fix fix = fix_of(p.fix);
    if (fix == Fix::Unknown)
      head_.cautions.push_back(where(p.place) + ": fix " + quoted(p.fix) + " of point " +
                               quoted(p.point) + " is not a known word; the position is used");
    if (fix != Fix::NotFixed) return true;
    const std::string why = "its solution is not fixed: " + quoted(p.fix);
    head_.findings.push_back({"gnss-fix", where(p.place) + ": point " + quoted(p.point) + ": " +
                                              why + "; the position is left out"});
    out_.told.left_out.push_back({p.point, why, p.place});
    return false;
  }

  Occupied occupied(const GeodeticPoint& p) {
    const geodesy::Position at =
        operation_->apply({p.longitude.in_degrees(), p.latitude.in_degrees(), 0});
    Length h = (p.ellipsoid_height - Elevation{}) - p.antenna_height;
    if (input_.geoid) {
      auto n = find_separation(*input_.geoid, {p.latitude, p.longitude}, p.place);
      if (auto* problem = std::get_if<Problem>(&n))
        problems_.push_back(std::move(*problem));
      else
        h -= std::get<Length>(n);
    }
    return {&p, at.east, at.north, h.in_metres()};
  }

  void average(const std::string& name, std::vector<Occupied>& seen) {
    const Occupied first = seen.front();
    bool sigmas = true;
    for (Occupied& o : seen) {
      o.e -= first.e;
      o.n -= first.n;
      o.h -= first.h;
      const auto positive = [](const auto& s) { return s && *s > Length{}; };
      sigmas = sigmas && positive(o.from->sigma_plan) && positive(o.from->sigma_height);
    }
    ReducedPoint told;
    const Means m = means(seen, sigmas);
    told.point = name;
    told.code = first.from->code;
    told.at = grid_point(first.e + m.e, first.n + m.n);
    told.height = Elevation::metres(first.h + m.h);
    told.sights = seen.size();
    told.from = "GNSS";
    told.place = first.from->place;
    if (m.plan_variance && m.height_variance)
      told.covariance = Covariance{*m.plan_variance, 0, *m.plan_variance, 0, 0, *m.height_variance};
    if (seen.size() > 1) check_spread(name, seen, m, sigmas);
    out_.points.push_back(std::move(told));
  }

  struct Means {
    double e = 0, n = 0, h = 0;
    std::optional<double> plan_variance, height_variance;
  };

  static Means means(const std::vector<Occupied>& seen, bool sigmas) {
    Means m;
    double plan = 0, height = 0;
    for (const Occupied& o : seen) {
      const double wp = sigmas ? 1 / std::pow(o.from->sigma_plan->in_metres(), 2) : 1;
      const double wh = sigmas ? 1 / std::pow(o.from->sigma_height->in_metres(), 2) : 1;
      m.e += wp * o.e;
      m.n += wp * o.n;
      m.h += wh * o.h;
      plan += wp;
      height += wh;
    }
    m.e /= plan;
    m.n /= plan;
    m.h /= height;
    if (sigmas) {
      m.plan_variance = 1 / plan;
      m.height_variance = 1 / height;
    } else if (const auto count = static_cast<double>(seen.size()); count > 1) {
      double vp = 0, vh = 0;
      for (const Occupied& o : seen) {
        vp += std::pow(o.e - m.e, 2) + std::pow(o.n - m.n, 2);
        vh += std::pow(o.h - m.h, 2);
      }
      m.plan_variance = vp / (2 * (count - 1)) / count;
      m.height_variance = vh / (count - 1) / count;
    }
    return m;
  }

  void check_spread(const std::string& name, const std::vector<Occupied>& seen, const Means& mean,
                    bool sigmas) {
    Occupations told{name, seen.size(), {}, {}};
    for (const Occupied& o : seen)
      told.residuals.push_back({Length::metres(mean.e - o.e), Length::metres(mean.n - o.n),
                                Length::metres(mean.h - o.h), o.from->place});
    const double radius = std::sqrt(adjust::chi_square_quantile(1 - kTests.alpha, 2));
    std::string doubt;
    for (std::size_t i = 0; i < seen.size(); ++i)
      for (std::size_t j = i + 1; j < seen.size(); ++j) {
        const Occupied& a = seen[i];
        const Occupied& b = seen[j];
        const double plan = std::hypot(a.e - b.e, a.n - b.n), height = std::abs(a.h - b.h);
        told.spread_plan = std::max(told.spread_plan, Length::metres(plan));
        told.spread_height = std::max(told.spread_height, Length::metres(height));
        if (!sigmas) continue;
        const double sp =
            std::hypot(a.from->sigma_plan->in_metres(), b.from->sigma_plan->in_metres());
        const double sh =
            std::hypot(a.from->sigma_height->in_metres(), b.from->sigma_height->in_metres());
        if (doubt.empty() && (plan > radius * sp || height > kTests.critical * sh))
          doubt = where(a.from->place) + " and " + where(b.from->place) + ": point " +
                  quoted(name) + " differs by " + mm(plan) + " in plan and " + mm(height) +
                  " in height, more than its standard deviations allow";
      }
    if (sigmas) told.verdict = doubt.empty() ? Verdict::Conforms : Verdict::DoesNotConform;
    if (!doubt.empty()) head_.findings.push_back({"gnss-spread", doubt});
    if (!sigmas)
      head_.cautions.push_back("GNSS point " + quoted(name) + ": occupations spread over " +
                               mm(told.spread_plan.in_metres()) + " in plan and " +
                               mm(told.spread_height.in_metres()) +
                               " in height; without standard deviations it is not judged");
    out_.told.occupations.push_back(std::move(told));
  }

  const FieldInput& input_;
  ResultHead& head_;
  std::optional<geodesy::Operation> operation_;
  GnssReduced out_;
  std::vector<Problem> problems_;
};

}  // namespace

GnssReduced reduce_gnss(const FieldInput& input, ResultHead& head) {
  return GnssReducer(input, head).reduce();
}

}  // namespace squaredig::field
