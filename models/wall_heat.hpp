#pragma once
// Heat from the gas in a cylinder to its walls.

namespace pulsewright {

enum class WallHeatLaw { none, woschni, hohenberg };

/// Walls and law of one cylinder; temperatures in K, assumed unless given.
struct CylinderWalls {
  WallHeatLaw law = WallHeatLaw::woschni;
  double piston_temperature = 550;
  double head_temperature = 550;
  double liner_temperature = 420;
};

/// Coefficients in W/(m2 K). p Pa, T K, bore m, volume m3; gas_speed and piston_speed m/s.
double woschni(double p, double T, double bore, double gas_speed);
double hohenberg(double p, double T, double volume, double mean_piston_speed);

/// Woschni's gas speed while gas is exchanged; while the valves are shut; and what combustion adds.
/// excess: pressure above the motored one, Pa; mass of the charge times its gas constant: mR, J/K.
double woschni_speed_gas_exchange(double mean_piston_speed);
double woschni_speed_closed(double mean_piston_speed);
double woschni_speed_burning(double displacement, double mR, double excess);

/// What the coefficient of either law is made of.
struct WallContact {
  double p, T, volume;        // of the gas: Pa, K, m3
  double bore, piston_speed;  // m, m/s (mean)
  double gas_speed;           // Woschni's, m/s
};
double wall_coefficient(WallHeatLaw law, const WallContact& contact);

/// Areas that the gas touches, m2.
struct WallAreas {
  double piston, head, liner;
};

/// Heat flow into the walls, W; negative when they warm the gas.
inline double wall_heat_flow(const CylinderWalls& w, const WallAreas& a, double coefficient, double T) {
  return coefficient * (a.piston * (T - w.piston_temperature) + a.head * (T - w.head_temperature) +
                        a.liner * (T - w.liner_temperature));
}

}  // namespace pulsewright
