#include "adjust/least_squares.h"

#include <Eigen/Dense>
#include <cmath>

namespace squaredig::adjust {
namespace {

using Real = long double;
using Matrix = Eigen::Matrix<Real, Eigen::Dynamic, Eigen::Dynamic>;
using Vector = Eigen::Matrix<Real, Eigen::Dynamic, 1>;

// Rows divided by their sigma, columns then scaled to length one, so that rank does not depend on
// units. A column of zeros keeps its scale and shows up as missing rank.
struct Weighted {
  Matrix a;
  Vector l;
  Vector column_length;
};

Weighted weighted(std::size_t unknowns, std::span<const Equation> equations) {
  const auto rows = static_cast<Eigen::Index>(equations.size());
  const auto columns = static_cast<Eigen::Index>(unknowns);
  Weighted w{Matrix::Zero(rows, columns), Vector(rows), Vector::Ones(columns)};
  for (Eigen::Index i = 0; i < rows; ++i) {
    const Equation& e = equations[static_cast<std::size_t>(i)];
    const auto sigma = static_cast<Real>(e.sigma);
    for (const Term& t : e.terms)
      w.a(i, static_cast<Eigen::Index>(t.unknown)) += static_cast<Real>(t.coefficient) / sigma;
    w.l(i) = static_cast<Real>(e.observed) / sigma;
  }
  for (Eigen::Index j = 0; j < columns; ++j) {
    const Real length = w.a.col(j).norm();
    if (length > 0) {
      w.a.col(j) /= length;
      w.column_length(j) = length;
    }
  }
  return w;
}

Tested tested(Real residual, Real redundancy, double sigma) {
  constexpr Real kChecked = 1e-9L;  // below it an observation is not checked by any other
  Tested t;
  t.residual = static_cast<double>(residual) * sigma;
  t.redundancy = static_cast<double>(redundancy);
  if (redundancy > kChecked) {
    t.normalised = static_cast<double>(residual / std::sqrt(redundancy));
    t.gross_error = static_cast<double>(-residual / redundancy) * sigma;
  }
  return t;
}

}  // namespace

std::optional<double> Estimates::sigma0() const {
  if (freedom == 0) return std::nullopt;
  return std::sqrt(sum_of_squares / static_cast<double>(freedom));
}

std::optional<Estimates> least_squares(std::size_t unknowns, std::span<const Equation> equations) {
  if (unknowns == 0 || equations.size() < unknowns) return std::nullopt;
  const Weighted w = weighted(unknowns, equations);
  Eigen::ColPivHouseholderQR<Matrix> qr(w.a);
  qr.setThreshold(1e-15L);
  const auto n = static_cast<Eigen::Index>(unknowns);
  const Eigen::Index rows = w.a.rows();
  if (qr.rank() < n) return std::nullopt;
  const Vector x = qr.solve(w.l);
  const Vector v = w.a * x - w.l;
  const Matrix q = qr.householderQ() * Matrix::Identity(rows, n);
  const Matrix r_inverse =
      qr.matrixR().topLeftCorner(n, n).template triangularView<Eigen::Upper>().solve(
          Matrix::Identity(n, n));
  const Matrix p_r = qr.colsPermutation() * r_inverse;
  const Matrix cofactor = p_r * p_r.transpose();

  Estimates out;
  out.freedom = equations.size() - unknowns;
  out.sum_of_squares = static_cast<double>(v.squaredNorm());
  for (Eigen::Index i = 0; i < n; ++i) {
    out.unknowns.push_back(static_cast<double>(x(i) / w.column_length(i)));
    for (Eigen::Index j = 0; j < n; ++j)
      out.cofactors.push_back(
          static_cast<double>(cofactor(i, j) / w.column_length(i) / w.column_length(j)));
  }
  for (Eigen::Index i = 0; i < rows; ++i)
    out.observations.push_back(
        tested(v(i), 1 - q.row(i).squaredNorm(), equations[static_cast<std::size_t>(i)].sigma));
  return out;
}

std::optional<std::size_t> most_suspect(const Estimates& estimates, double critical) {
  std::optional<std::size_t> worst;
  double greatest = critical;
  for (std::size_t i = 0; i < estimates.observations.size(); ++i) {
    const auto& w = estimates.observations[i].normalised;
    if (w && std::abs(*w) > greatest) {
      greatest = std::abs(*w);
      worst = i;
    }
  }
  return worst;
}

}  // namespace squaredig::adjust
