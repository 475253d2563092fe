#include "solver/polynomial_fit.hpp"

#include <Eigen/Dense>
#include <cmath>
#include <numbers>

namespace pulsewright {

// Equation   least squares of (polynomial/f - 1) with weights w; Lawson: w <- w |error|, repeated
// Source     C. L. Lawson, Contributions to the theory of linear least maximum approximation, 1961
// Symbols    400 Chebyshev points z; f the function
// Valid for  f > 0 on -1..1
// Tested by  tests/solver/mixture_test.cpp (errors of the fits)
std::vector<double> fit_relative(const std::function<double(double)>& f, int degree) {
  constexpr int points = 400, rounds = 40;
  Eigen::MatrixXd powers(points, degree + 1);
  for (int i = 0; i < points; ++i) {
    const double z = std::cos(std::numbers::pi * (i + 0.5) / points);
    powers(i, 0) = 1 / f(z);
    for (int k = 1; k <= degree; ++k) powers(i, k) = powers(i, k - 1) * z;
  }
  Eigen::VectorXd weight = Eigen::VectorXd::Constant(points, 1.0 / points), fit;
  for (int round = 0; round < rounds; ++round) {
    const Eigen::VectorXd root = weight.cwiseSqrt();
    fit = (root.asDiagonal() * powers).colPivHouseholderQr().solve(root);
    const Eigen::VectorXd error = (powers * fit - Eigen::VectorXd::Ones(points)).cwiseAbs();
    weight = weight.cwiseProduct(error);
    weight /= weight.sum();
  }
  return {fit.begin(), fit.end()};
}

}  // namespace pulsewright
