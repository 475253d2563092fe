#pragma once
// Shock tube problems with published star values.
//   Source: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed., 2009, tables 4.1 to 4.3 (tests 1
//           to 5; test 1 is G. A. Sod, J. Comput. Phys. 27, 1978); P. D. Lax, Comm. Pure Appl. Math. 7, 1954. All gamma 1.4.
// The star values are the exact solution to nine digits. The printed ones have five or six and agree, except test 5: there
// 1691.64 is printed where 1691.64696 rounds to 1691.65.

#include <vector>

#include "tests/verification/exact_riemann.hpp"

namespace pulsewright {

struct RiemannProblem {
  const char* name;
  GasState left, right;
  double time;  // when the profile is compared, on a domain 0..1 with the diaphragm at 0.5
  double p_star, u_star, rho_star_left, rho_star_right;
  double left_outer, left_inner, right_outer, right_inner;  // wave speeds; outer = inner for a shock
};

inline std::vector<RiemannProblem> riemann_problems() {
  return {
      {"Toro 1 (Sod)",
       {1, 0, 1},
       {0.125, 0, 0.1},
       0.25,
       0.303130178,
       0.92745262,
       0.426319428,
       0.265573712,
       -1.18321596,
       -0.0702728126,
       1.75215573,
       1.75215573},
      {"Toro 2 (near vacuum)",
       {1, -2, 0.4},
       {1, 2, 0.4},
       0.15,
       0.00189387342,
       0,
       0.0218521182,
       0.0218521182,
       -2.74833148,
       -0.348331477,
       2.74833148,
       0.348331477},
      {"Toro 3 (strong blast)",
       {1, 0, 1000},
       {1, 0, 0.01},
       0.012,
       460.893787,
       19.5974514,
       0.575062298,
       5.9992407,
       -37.4165739,
       -13.8996322,
       23.517537,
       23.517537},
      {"Toro 4 (strong blast from the right)",
       {1, 0, 0.01},
       {1, 0, 100},
       0.035,
       46.0950442,
       -6.19632825,
       5.99241686,
       0.57511279,
       -7.43747626,
       -7.43747626,
       11.8321596,
       4.39656567},
      {"Toro 5 (two shocks meet)",
       {5.99924, 19.5975, 460.894},
       {5.99242, -6.19633, 46.095},
       0.035,
       1691.64696,
       8.68977441,
       14.28235,
       31.0426016,
       0.789593919,
       0.789593919,
       12.2507781,
       12.2507781},
      {"Lax",
       {0.445, 0.698, 3.528},
       {0.5, 0, 0.571},
       0.16,
       2.46609792,
       1.52872303,
       0.344568474,
       1.30408453,
       -2.63356507,
       -1.63669744,
       2.47932148,
       2.47932148},
  };
}

}  // namespace pulsewright
