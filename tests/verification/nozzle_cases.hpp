#pragma once
// Steady flow of a perfect gas, gamma 1.4, through two nozzles: area law, back pressure, exact Mach number and
// pressure.
//   Geometry from memory of: J. D. Anderson, Computational Fluid Dynamics: The Basics with Applications, 1995, ch. 7
//   (shape 1 + 2.2 (x - 1.5)^2); NPARC Alliance validation archive, converging-diverging verification case (the cosine
//   shape). Figures: area-Mach and normal-shock relations (NACA Report 1135, 1953), recomputed.

#include <cmath>
#include <numbers>
#include <vector>

namespace pulsewright {

struct NozzleStation {
  double x, mach, p_p0;  // p0 of the supply
};

struct NozzleCase {
  const char* name;
  double length;
  double (*area)(double x);  // over the throat's
  double back_pressure;      // over the supply's total pressure
  double exit_mach, exit_total_pressure;
  double shock_at;  // negative: none
  std::vector<NozzleStation> stations;
};

inline double parabola_area(double x) { return 1 + 2.2 * (x - 1.5) * (x - 1.5); }
inline double cosine_area(double x) {
  const double angle = (0.2 * x - 1) * std::numbers::pi;
  return x < 5 ? 1.75 - 0.75 * std::cos(angle) : 1.25 - 0.25 * std::cos(angle);
}

inline std::vector<NozzleCase> nozzle_cases() {
  return {
      {"parabola, shock",
       3,
       parabola_area,
       0.6784,
       0.14307582,
       0.688170973,
       2.09933058,
       {{0.1, 0.10973168, 0.99161674},
        {0.4, 0.16048405, 0.9821784},
        {0.7, 0.24940701, 0.95764889},
        {1, 0.41285718, 0.88929429},
        {1.3, 0.70897879, 0.71514342},
        {1.6, 1.1690416, 0.42924442},
        {1.9, 1.7151036, 0.19802533},
        {2.2, 0.45771235, 0.59608068},
        {2.5, 0.27488585, 0.65297539},
        {2.8, 0.18179657, 0.67248408}}},
      {"cosine, shock",
       10,
       cosine_area,
       0.75,
       0.50191453,
       0.890797692,
       7.5622864,
       {{0.25, 0.24049615, 0.96054495},
        {1, 0.25527689, 0.95568999},
        {1.75, 0.29114573, 0.94285881},
        {2.5, 0.35655985, 0.91586909},
        {3.25, 0.4665648, 0.86143633},
        {4, 0.64196651, 0.75789453},
        {4.75, 0.89799875, 0.59254349},
        {5.5, 1.1249365, 0.45399838},
        {6.25, 1.3159737, 0.35313339},
        {7, 1.4949141, 0.27441563},
        {8.5, 0.55715193, 0.72147875},
        {9.25, 0.51513808, 0.74331648},
        {10, 0.50191453, 0.75}}},
      {"cosine, subsonic",
       10,
       cosine_area,
       0.89,
       0.41143572,
       1,
       -1,
       {{0.25, 0.23151131, 0.96336918},
        {1, 0.24565653, 0.95887927},
        {1.75, 0.27991279, 0.94703376},
        {2.5, 0.34206953, 0.92222655},
        {3.25, 0.44525388, 0.87275963},
        {4, 0.60304892, 0.78212904},
        {4.75, 0.7827674, 0.66724741},
        {5.5, 0.77615127, 0.6715567},
        {6.25, 0.67701134, 0.73566782},
        {7, 0.57832234, 0.7972221},
        {7.75, 0.50213827, 0.84181598},
        {8.5, 0.45046988, 0.8700197},
        {9.25, 0.42098388, 0.88522703},
        {10, 0.41143572, 0.89}}},
      {"cosine, supersonic",
       10,
       cosine_area,
       0.16,
       1.8541235,
       0.999999948,
       -1,
       {{0.25, 0.24049615, 0.96054495},
        {1, 0.25527689, 0.95568999},
        {1.75, 0.29114573, 0.94285881},
        {2.5, 0.35655985, 0.91586909},
        {3.25, 0.4665648, 0.86143633},
        {4, 0.64196651, 0.75789453},
        {4.75, 0.89799875, 0.59254349},
        {5.5, 1.1249365, 0.45399838},
        {6.25, 1.3159737, 0.35313339},
        {7, 1.4949141, 0.27441563},
        {7.75, 1.6464291, 0.21956393},
        {8.5, 1.7602415, 0.1849219},
        {9.25, 1.830439, 0.16611164},
        {10, 1.8541235, 0.16017598}}},
  };
}

}  // namespace pulsewright
