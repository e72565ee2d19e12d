// What the tests say of an adjusted part: nothing, one reading left out, a named blunder, or a
// doubt that cannot be settled.
#include <algorithm>
#include <cmath>
#include <map>

#include "field/net_suspects_internal.h"
#include "quantity/number_text.h"

namespace squaredig::field {
namespace {

std::string amount(Reading reading, double error) {
  if (reading == Reading::Distance) return fixed(error * 1000, 1) + " mm";
  return fixed(Angle::radians(error).in_seconds(), 1) + "\"";
}

class Examiner {
 public:
  Examiner(const Net& part, const std::vector<NetPoint>& control, const Shape& shape)
      : net_(without_sideshots(part)), control_(control), shape_(shape) {}

  Diagnosis examine() {
    out_.fit = fit_net(net_, shape_);
    if (!out_.fit) {
      // readings that contradict each other can lead nowhere at all: a wrong name may explain them
      if (!on_a_circle()) supposed();
      return std::move(out_);
    }
    if (out_.fit->passes()) return std::move(out_);
    if (!adjust::most_suspect(out_.fit->estimates, kTests.critical)) {
      larger_than_stated();
      return std::move(out_);
    }
    const NetFit first = *out_.fit;
    if (snoop(1)) return std::move(out_);
    if (supposed()) return std::move(out_);
    out_ = Diagnosis{};
    out_.fit = first;
    if (!snoop(net_.sights.size())) give_up(first);
    return std::move(out_);
  }

 private:
  bool on_a_circle() const {
    for (std::size_t s = 0; s < net_.setups.size(); ++s)
      if (on_danger_circle(net_, s)) return true;
    return false;
  }

  // No single reading stands out, but all together miss by more than their sigmas.
  void larger_than_stated() {
    out_.unit = *out_.fit->estimates.sigma0();
    out_.findings.push_back(
        {"sigmas-too-small", names() + ": the readings miss by " + fixed(out_.unit, 2) +
                                 " times their stated standard deviations, more than chance; " +
                                 "standard deviations of results are multiplied by it"});
  }

  std::string names() const {
    std::string text;
    for (const NetSetup& setup : net_.setups)
      text += (text.empty() ? "set-up " : ", set-up ") + quoted(setup.name);
    return text;
  }

  // Leaves out one reading after the other until the part passes. True where it then passes, or
  // where what is wrong cannot be told apart.
  bool snoop(std::size_t most) {
    Net net = net_;
    NetFit fit = *out_.fit;
    std::vector<Finding> findings;
    std::vector<Observed> left_out;
    for (std::size_t turn = 0; turn < most; ++turn) {
      const auto worst = adjust::most_suspect(fit.estimates, kTests.critical);
      if (!worst) return false;
      const auto group = alike_readings(fit, *worst);
      const bool own_place = fit.observed[*worst].sight >= net.sights.size();
      if (group.size() > 1 || own_place) {
        if (turn > 0 || !passes_without(net, fit, *worst)) return false;
        return cannot_be_told_apart(fit, *worst, group);
      }
      const Observed o = fit.observed[*worst];
      findings.push_back(named(fit, *worst));
      left_out.push_back(o);
      leave_out(net, o);
      auto next = fit_net(net, shape_);
      if (!next || next->estimates.freedom == 0) return false;
      fit = std::move(*next);
      if (!fit.passes()) continue;
      return settled(std::move(fit), std::move(findings), std::move(left_out));
    }
    return false;
  }

  bool settled(NetFit fit, std::vector<Finding> findings, std::vector<Observed> left_out) {
    if (left_out.size() == 1) {
      const Observed& o = left_out.front();
      const auto others = other_names_that_fit(net_, o.sight, control_, shape_);
      if (!others.empty() && !out_.fit->net.sights.empty()) {
        for (const Supposition& s : others) doubt(s.code, findings.front().text + "; or " + s.text);
        return true;
      }
    }
    out_.fit = std::move(fit);
    out_.findings = std::move(findings);
    out_.left_out = std::move(left_out);
    return true;
  }

  std::vector<std::size_t> alike_readings(const NetFit& fit, std::size_t worst) const {
    return adjust::alike(fit.estimates, fit.equations, worst, kTests.alike);
  }

  bool passes_without(Net net, const NetFit& fit, std::size_t worst) const {
    if (fit.observed[worst].sight >= net.sights.size()) return false;
    leave_out(net, fit.observed[worst]);
    const auto next = fit_net(net, shape_);
    return next && next->passes();
  }

  Finding named(const NetFit& fit, std::size_t i) const {
    const Observed& o = fit.observed[i];
    const NetSight& sight = fit.net.sights[o.sight];
    const double error = *fit.estimates.observations[i].gross_error;
    return {"blunder",
            where(sight.places) + ": the " + words(o.reading) + " to " +
                quoted(fit.net.points[sight.target].name) + " is wrong by " +
                amount(o.reading, error) +
                (o.reading == Reading::Zenith ? ", or the height of the target is" : "") +
                "; it is left out"};
  }

  bool cannot_be_told_apart(const NetFit& fit, std::size_t worst,
                            const std::vector<std::size_t>& group) {
    std::string lines;
    for (const std::size_t i : group) {
      const Observed& o = fit.observed[i];
      lines += lines.empty() ? "" : ", ";
      if (o.sight >= fit.net.sights.size()) {
        lines += "a known point's own place";
        continue;
      }
      const NetSight& sight = fit.net.sights[o.sight];
      lines += where(sight.places) + " (" + words(o.reading) + " to " +
               quoted(fit.net.points[sight.target].name) + ")";
    }
    const double error = std::abs(*fit.estimates.observations[worst].gross_error);
    std::string text = "one of these is wrong by about " +
                       amount(fit.observed[worst].reading, error) +
                       " and they cannot be told apart: " + lines;
    for (const Supposition& s : suppositions_that_fit(net_, control_, shape_))
      if (s.blunder != Blunder::WholeSight) text += "; or " + s.text;
    doubt("blunder", text);
    return true;
  }

  bool supposed() {
    const auto fitting = suppositions_that_fit(net_, control_, shape_);
    if (fitting.empty()) return false;
    if (!out_.fit) out_.fit = fitting.front().fit;
    if (fitting.size() == 1 && fitting.front().blunder == Blunder::WholeSight) {
      out_.fit = fitting.front().fit;
      out_.findings.push_back({fitting.front().code, fitting.front().text + "; it is left out"});
      return true;
    }
    // those that explain nearly as well stand beside the best
    constexpr double kNearlyAsWell = 10.83;  // chi-square of one more unknown at that alpha
    std::string text;
    for (const Supposition& s : fitting)
      if (s.fit.sum_of_squares() < fitting.front().fit.sum_of_squares() + kNearlyAsWell)
        text += (text.empty() ? "" : "; or ") + s.text;
    doubt(fitting.front().code, text);
    return true;
  }

  void doubt(const std::string& code, const std::string& text) {
    out_.findings.push_back({code, text + "; no coordinates are given from it"});
    out_.doubts.push_back(text);
    out_.withheld = true;
  }

  void give_up(const NetFit& fit) {
    out_ = Diagnosis{};
    out_.fit = fit;
    const auto worst = adjust::most_suspect(fit.estimates, kTests.critical);
    std::string text = names() + ": the readings do not fit together (" +
                       fixed(*fit.estimates.sigma0(), 1) + " times their standard deviations)";
    if (worst && fit.observed[*worst].sight < fit.net.sights.size())
      text += ", worst " + where(fit.net.sights[fit.observed[*worst].sight].places) + ", " +
              words(fit.observed[*worst].reading);
    doubt("does-not-fit", text);
  }

  Net net_;
  const std::vector<NetPoint>& control_;
  const Shape& shape_;
  Diagnosis out_;
};

}  // namespace

std::string where(const Place& place) { return place.file + ":" + std::to_string(place.line); }

std::string where(const std::vector<Place>& places) {
  std::string text;
  for (std::size_t i = 0; i < places.size(); ++i)
    text += i == 0 ? where(places[i]) : " and " + std::to_string(places[i].line);
  return text;
}

Diagnosis diagnose(const Net& part, const std::vector<NetPoint>& control, const Shape& shape) {
  return Examiner(part, control, shape).examine();
}

}  // namespace squaredig::field
