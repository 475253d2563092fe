#pragma once
// Compressor and charge cooler: what the boost costs on the shaft, and how warm the charge gets.

#include "models/engine_case.hpp"
#include "solver/gas.hpp"

namespace pulsewright {

/// What is said where there is no map.
extern const char* const no_map_sentence;

/// Where one of the compressors stands on its map, all taking alike of the air; only with a map. air_flow of all, kg/s.
CompressorMapAnswer compressor_on_map(const ChargeCase& charge, double pressure_ratio, double air_flow);

/// Isentropic efficiency, total to total, at a pressure ratio over the wheel and an air flow, kg/s. One figure at every
/// point, while no map is given.
double compressor_efficiency(const ChargeCase& charge, double pressure_ratio, double air_flow);

/// Pressure that the charge cooler costs, Pa.
double cooler_drop(const ChargeCase& charge, double air_flow);

/// The compressor at work.
struct CompressorPoint {
  double pressure_ratio;  // over the wheel: intake and cooler's drop over ambient
  double efficiency;
  double work;  // rise of total enthalpy, J/kg; 0 without boost
  double rise;  // of temperature over the wheel, K
};
CompressorPoint compressor_point(const EngineCase& engine, const Gas& gas, double boost_gauge, double air_flow);

/// Tip speed of the compressor's exducer, m/s: from the map, or from the work and its coefficient; 0 without work.
double compressor_tip_speed(const ChargeCase& charge, const CompressorPoint& point, double air_flow);

/// Temperature at the intake ports, K: its rise over ambient goes with the compressor's, and is the case's at the
/// target (with a map and a cooler of given effectiveness: what these two give). Without boost, in a case with some, the air comes at ambient temperature.
double charge_temperature_at(const EngineCase& engine, const Gas& gas, double boost_gauge, double air_flow);

/// Boost that the compressor gives when it does this work, Pa gauge; the inverse of compressor_point.
double boost_from_work(const EngineCase& engine, const Gas& gas, double work, double air_flow);

}  // namespace pulsewright
