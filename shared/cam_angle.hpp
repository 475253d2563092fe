#pragma once
// Cam timing as it stands on a cam card: "54 deg before bdc", "18 deg after tdc", "centre 108 deg after tdc".

#include <string_view>

namespace pulsewright {

enum class DeadCentre { top, bottom };

struct CamAngle {
  double after;         // crank angle after that dead centre, rad; before it: negative
  DeadCentre dead;      // which dead centre is meant
  bool centre = false;  // the centre of the lift, not the opening or closing
};

/// Throws Error (case_file) with an example; the angle must lie within 360 degrees of its dead centre.
CamAngle parse_cam_angle(std::string_view text, std::string_view key);

}  // namespace pulsewright
