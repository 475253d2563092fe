#include "solver/sweep.hpp"

#include <cmath>

#include "solver/friction.hpp"
#include "solver/limiter.hpp"

// Compiled once for each build (see solver/CMakeLists.txt); PULSEWRIGHT_SWEEP names the build.
namespace pulsewright::PULSEWRIGHT_SWEEP {
namespace {

/// 1/rho, and the slopes of rho e by p, rho and Y about a cell's state.
struct EnergySlopes {
  double per_rho, by_p, by_rho, by_Y;
};

// Equation   d(rho e) = dp/(g-1) + (e - R T/(g-1)) drho + rho (e_Y - T R_Y/(g-1)) dY
// Source     chain rule on e(T, Y) with T = p/(rho R(Y))
// Symbols    g = c^2/(R T); E = rho (e + u^2/2) J/m3; index Y derivative by burned fraction, at constant T
// Valid for  linear about the cell: what the edges lose is of second order in the slope, as their other values; exact
//            for a perfect gas. One division serves 1/rho and 1/(g-1)
// Tested by  tests/verification/simple_wave_checks.cpp (order of accuracy), tests/verification/contact_checks.cpp
template <class Law>
inline EnergySlopes energy_slopes(const Law &gas, double rho, double u, double E, double c, double T, double Y) {
  const double RT = gas_constant(gas, Y) * T, excess = c * c - RT, per = 1 / (rho * excess);
  const double per_rho = excess * per, by_p = RT * rho * per;
  return {per_rho, by_p, E * per_rho - 0.5 * u * u - by_p * RT, rho * energy_by_burned(gas, T, by_p)};
}
inline EnergySlopes energy_slopes(const PerfectGas &gas, double rho, double, double, double, double, double) {
  return {1 / rho, gas.cv / gas.gas_constant, 0, 0};
}

// Where the prediction would leave less of rho or p than this share of the cell's, the cell is taken as it is, first order.
constexpr double least_share = 0.2;

/// First order, without prediction, where the prediction emptied a cell. Rare: not vectorised.
void take_as_they_are(Arena &a) {
  for (std::size_t i = 1; i + 1 < a.size(); ++i) {
    const bool rho_sound = lesser(a.start.rho[i], a.finish.rho[i]) > least_share * a.rho[i];
    const bool p_sound = lesser(a.start.p[i], a.finish.p[i]) > least_share * a.p[i];
    if (rho_sound && p_sound) continue;
    a.p_mid[i] = a.p[i];
    for (EdgeStates *e : {&a.start, &a.finish}) {
      e->rho[i] = a.rho[i], e->u[i] = a.u[i], e->p[i] = a.p[i], e->Y[i] = a.Y[i];
      e->energy[i] = a.energy[i];
    }
  }
}

// Equation   q(t + dt/2) = q - dt/2 (A q_x), edges = q(t + dt/2) -+ limited slope/2, primitive variables, with the
//            source of the flare:  rho: -rho u A_x/A,  p: -rho c^2 u A_x/A
// Source     E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed., 2009, section 14.4
// Symbols    q = (rho, u, p, Y); A_x/A = flare, 1/m
// Valid for  Courant number up to 1
// Tested by  tests/verification/simple_wave_checks.cpp (order of accuracy), tests/solver/sweep_test.cpp
template <class Law>
void predict_loop(Arena &a, const Law &law, double dt) {
  const Law gas = law;  // a local copy cannot alias the lanes
  const std::size_t n = a.size();
  const double *__restrict rho = a.rho.data(), *__restrict u = a.u.data(), *__restrict p = a.p.data(),
                           *__restrict Y = a.Y.data(), *__restrict c = a.c.data(), *__restrict inv_dx = a.inv_dx.data(),
                           *__restrict flare = a.flare.data(), *__restrict E = a.energy.data(),
                           *__restrict T = a.T.data();
  double *__restrict s_rho = a.start.rho.data(), *__restrict s_u = a.start.u.data(), *__restrict s_p = a.start.p.data(),
                     *__restrict s_Y = a.start.Y.data(), *__restrict s_E = a.start.energy.data();
  double *__restrict f_rho = a.finish.rho.data(), *__restrict f_u = a.finish.u.data(),
                     *__restrict f_p = a.finish.p.data(), *__restrict f_Y = a.finish.Y.data(),
                     *__restrict f_E = a.finish.energy.data();
  double *__restrict p_mid = a.p_mid.data();
  double margin = 1e300;  // of what is left over the least share, Pa and kg/m3 alike: only its sign counts
#pragma omp simd reduction(min : margin)
  for (std::size_t i = 1; i < n - 1; ++i) {
    const double r0 = rho[i], u0 = u[i], p0 = p[i], Y0 = Y[i];
    const double d_rho = limited(r0 - rho[i - 1], rho[i + 1] - r0);
    const double d_u = limited(u0 - u[i - 1], u[i + 1] - u0);
    const double d_p = limited(p0 - p[i - 1], p[i + 1] - p0);
    const double d_Y = limited(Y0 - Y[i - 1], Y[i + 1] - Y0);
    const EnergySlopes by = energy_slopes(gas, r0, u0, E[i], c[i], T[i], Y0);
    const double half = 0.5 * dt, r = half * inv_dx[i], spread = r * d_u + half * u0 * flare[i], run = r * u0;
    const double rho_m = r0 - run * d_rho - r0 * spread;
    const double u_m = u0 - run * d_u - r * d_p * by.per_rho;
    const double p_m = p0 - run * d_p - r0 * c[i] * c[i] * spread;
    const double Y_m = Y0 - run * d_Y;
    const double sr = rho_m - 0.5 * d_rho, su = u_m - 0.5 * d_u, sp = p_m - 0.5 * d_p, sY = Y_m - 0.5 * d_Y;
    const double fr = rho_m + 0.5 * d_rho, fu = u_m + 0.5 * d_u, fp = p_m + 0.5 * d_p, fY = Y_m + 0.5 * d_Y;
    p_mid[i] = p_m;
    s_rho[i] = sr, s_u[i] = su, s_p[i] = sp, s_Y[i] = sY;
    f_rho[i] = fr, f_u[i] = fu, f_p[i] = fp, f_Y[i] = fY;
    const double inner =
        E[i] - 0.5 * r0 * u0 * u0 + by.by_p * (p_m - p0) + by.by_rho * (rho_m - r0) + by.by_Y * (Y_m - Y0);
    const double half_slope = 0.5 * (by.by_p * d_p + by.by_rho * d_rho + by.by_Y * d_Y);
    s_E[i] = inner - half_slope + 0.5 * sr * su * su;
    f_E[i] = inner + half_slope + 0.5 * fr * fu * fu;
    margin = lesser(margin, lesser(lesser(sr, fr) - least_share * r0, lesser(sp, fp) - least_share * p0));
  }
  if (!(margin > 0)) take_as_they_are(a);
}

void predict(Arena &a, const Gas &gas, double dt) {
  with_law(gas, [&](const auto &law) { predict_loop(a, law, dt); });
}

// Equation   S_L = min(u_L - c_L, u_R - c_R), S_R = max(u_L + c_L, u_R + c_R)
//            S* = (p_R - p_L + rho_L u_L (S_L - u_L) - rho_R u_R (S_R - u_R)) / (rho_L (S_L - u_L) - rho_R (S_R - u_R))
//            rho* = rho_K (S_K - u_K)/(S_K - S*),
//            E* = (E_K (S_K - u_K) + (S* - u_K)(rho_K (S_K - u_K) S* + p_K))/(S_K - S*)
//            F = F_K + S_K (U*_K - U_K) on the side K that holds the face; min(S_L, 0), max(S_R, 0) for the branches
// Source     E. F. Toro, M. Spruce, W. Speares, Shock Waves 4 (1994) 25; Toro 2009, section 10.4-10.5
// Symbols    c of the cells, so that no square root is needed here
// Valid for  positive rho and p; a stationary contact is kept exactly
// Tested by  tests/solver/sweep_test.cpp, tests/verification/riemann_checks.cpp
void fluxes(Arena &a) {
  const std::size_t n = a.size();
  const double *__restrict lr = a.finish.rho.data(), *__restrict lu = a.finish.u.data(),
                           *__restrict lp = a.finish.p.data(), *__restrict lY = a.finish.Y.data(),
                           *__restrict lE = a.finish.energy.data();
  const double *__restrict rr = a.start.rho.data(), *__restrict ru = a.start.u.data(),
                           *__restrict rp = a.start.p.data(), *__restrict rY = a.start.Y.data(),
                           *__restrict rE = a.start.energy.data(), *__restrict c = a.c.data();
  double *__restrict f_mass = a.flux_mass.data(), *__restrict f_mom = a.flux_momentum.data(),
                     *__restrict f_ene = a.flux_energy.data(), *__restrict f_bur = a.flux_burned.data();
#pragma omp simd
  for (std::size_t i = 2; i < n - 1; ++i) {
    const std::size_t l = i - 1;
    const double uL = lu[l], uR = ru[i], cL = c[l], cR = c[i];
    const double SL = lesser(uL - cL, uR - cR), SR = greater(uL + cL, uR + cR);
    const double mL = lr[l] * (SL - uL), mR = rr[i] * (SR - uR);  // mass swept by the outer waves
    const double S = (rp[i] - lp[l] + mL * uL - mR * uR) / (mL - mR);
    const bool left = S >= 0;
    const double K = left ? lesser(SL, 0.0) : greater(SR, 0.0);  // 0 where the outer wave is swept past the face
    const double SK = left ? SL : SR, uK = left ? uL : uR, rK = left ? lr[l] : rr[i], pK = left ? lp[l] : rp[i];
    const double EK = left ? lE[l] : rE[i], mK = left ? mL : mR;
    const double per_gap = 1 / (SK - S), r_star = mK * per_gap;
    const double E_star = ((SK - uK) * EK + (S - uK) * (mK * S + pK)) * per_gap;
    const double mass = rK * uK + K * (r_star - rK);
    f_mass[i] = mass;
    f_mom[i] = rK * uK * uK + pK + K * (r_star * S - rK * uK);
    f_ene[i] = uK * (EK + pK) + K * (E_star - EK);
    f_bur[i] = mass * (left ? lY[l] : rY[i]);
  }
}

// Equation   U' = U - dt/V (F A)|_start^finish, momentum with (F - p_mid) A so that gas at rest stays at rest in any
//            taper; then losses, implicit in u but for its last size: u <- u / (1 + dt k |u_last|/2), and heat dt (h (T_wall - T) + q)
// Source     Godunov-type balance with the flare's pressure force p dA/dx integrated exactly for linear p
// Symbols    V cell volume, k loss per metre, h W/(m3 K), q W/m3
// Valid for  Courant number up to 1
// Tested by  tests/solver/rest_test.cpp, tests/solver/closed_network_test.cpp,
//            tests/verification/steady_flow_checks.cpp (Fanno, Rayleigh)
template <class Law>
SweepReport update_loop(Arena &a, const Law &law, double dt) {
  const Law gas = law;
  const std::size_t n = a.size();
  double *__restrict rho = a.rho.data(), *__restrict mom = a.momentum.data(), *__restrict ene = a.energy.data(),
                     *__restrict bur = a.burned.data(), *__restrict u = a.u.data(), *__restrict p = a.p.data(),
                     *__restrict Y = a.Y.data(), *__restrict T = a.T.data(), *__restrict c = a.c.data(),
                     *__restrict taken = a.heat_taken.data();
  const double *__restrict fm = a.flux_mass.data(), *__restrict fp = a.flux_momentum.data(),
                           *__restrict fe = a.flux_energy.data(), *__restrict fb = a.flux_burned.data(),
                           *__restrict A = a.face_area.data(), *__restrict inv_V = a.inv_volume.data(),
                           *__restrict pm = a.p_mid.data(), *__restrict k = a.loss.data(),
                           *__restrict h = a.heat_exchange.data(), *__restrict Tw = a.wall_temperature.data(),
                           *__restrict q = a.heat_given.data(), *__restrict inv_dx = a.inv_dx.data();
  double fastest = 0, coldest = 1e300, thinnest = 1e300, check = 0;
#pragma omp simd reduction(max : fastest) reduction(min : coldest, thinnest) reduction(+ : check)
  for (std::size_t i = 0; i < n; ++i) {
    const double w = dt * inv_V[i], A0 = A[i], A1 = A[i + 1];
    const double r1 = rho[i] - w * (fm[i + 1] * A1 - fm[i] * A0);
    const double slowing = 1 + 0.5 * dt * k[i] * (u[i] > 0 ? u[i] : -u[i]), per = 1 / (r1 * slowing);
    const double inv_r = slowing * per;
    const double u1 = (mom[i] - w * ((fp[i + 1] - pm[i]) * A1 - (fp[i] - pm[i]) * A0)) * per;
    const double heat = dt * (h[i] * (Tw[i] - T[i]) + q[i]);
    const double E1 = ene[i] - w * (fe[i + 1] * A1 - fe[i] * A0) + heat;
    const double b1 = bur[i] - w * (fb[i + 1] * A1 - fb[i] * A0);
    const double e1 = E1 * inv_r - 0.5 * u1 * u1, Y1 = b1 * inv_r;
    const ThermalState state = thermal_state(gas, e1, Y1, T[i]);
    const double T1 = state.T, RT = gas_constant(gas, Y1) * T1;
    const double c1 = std::sqrt(state.heat_ratio * RT);
    taken[i] += heat;
    rho[i] = r1, mom[i] = r1 * u1, ene[i] = E1, bur[i] = b1;
    u[i] = u1, p[i] = r1 * RT, Y[i] = Y1, T[i] = T1, c[i] = c1;
    const double rate = ((u1 > 0 ? u1 : -u1) + c1) * inv_dx[i];
    fastest = greater(fastest, rate);
    coldest = lesser(coldest, e1);
    thinnest = lesser(thinnest, r1);
    check += rate;
  }
  return {fastest, coldest, thinnest, check};
}

SweepReport update(Arena &a, const Gas &gas, double dt) {
  return with_law(gas, [&](const auto &law) { return update_loop(a, law, dt); });
}

// Equation   loss = f_D/D_h + k of the flow's direction; heat exchange = 4 Nu k_gas / D_h^2, Re = rho |u| D_h / mu
// Source     Darcy-Weisbach; h = Nu k_gas/D_h over a perimeter of 4 A/D_h; f_D and Nu as in solver/friction.hpp
// Symbols    D_h m, loss 1/m, heat exchange W/(m3 K); mu Pa s, k_gas W/(m K) at the gas temperature
// Valid for  Re of the momentary |u|; for friction not below 2000: the factor stands for some steps, in which a front
//            may run into gas at rest, and 64/Re of creeping gas (Re 1) would stop it. Below, the gas loses next to
//            nothing
// Tested by  tests/solver/sources_test.cpp, tests/verification/steady_flow_checks.cpp (Fanno, Rayleigh)
template <class Law>
void sources_loop(Arena &a, const Law &law, const SourceSwitches &on) {
  const Law gas = law;
  const double constant = on.rough_wall ? 0 : on.darcy_factor, rough_wall = on.rough_wall ? 1 : 0,
               losses = on.losses ? 1 : 0, heat = on.heat_factor;
  const double *__restrict rho = a.rho.data(), *__restrict u = a.u.data(), *__restrict T = a.T.data(),
                           *__restrict Y = a.Y.data(), *__restrict D = a.hydraulic_diameter.data(),
                           *__restrict rough = a.roughness_term.data(), *__restrict ahead = a.loss_forward.data(),
                           *__restrict back = a.loss_backward.data();
  double *__restrict loss = a.loss.data(), *__restrict exchange = a.heat_exchange.data();
  const std::size_t n = a.size();
#pragma omp simd
  for (std::size_t i = 0; i < n; ++i) {
    const double per_D = 1 / D[i], speed = u[i] > 0 ? u[i] : -u[i];
    const double re = rho[i] * speed * D[i] / viscosity(gas, T[i], Y[i]);
    const double f = constant + rough_wall * quick_darcy(greater(re, 2000.0), rough[i]);
    loss[i] = f * per_D + losses * (u[i] > 0 ? ahead[i] : back[i]);
    exchange[i] = heat * 4 * nusselt(re) * conductivity(gas, T[i], Y[i]) * per_D * per_D;
  }
}

void sources(Arena &a, const Gas &gas, const SourceSwitches &on) {
  with_law(gas, [&](const auto &law) { sources_loop(a, law, on); });
}

}  // namespace

extern const Sweep sweep;
const Sweep sweep{predict, fluxes, update, sources, PULSEWRIGHT_SWEEP_NAME};

}  // namespace pulsewright::PULSEWRIGHT_SWEEP
