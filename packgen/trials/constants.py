"""The few physical constants the models share, each with its source."""

from __future__ import annotations

import math

GRAVITY = 9.80665
"""Standard gravity in m/s² (3rd CGPM, 1901)."""

AIR_DENSITY = 1.225
"""Air at sea level and 15 °C in kg/m³ (ISO 2533, the standard atmosphere; US Standard Atmosphere 1976)."""

WATER_DENSITY = 1000.0
"""Fresh water in kg/m³, rounded as school books do (998.2 at 20 °C)."""

SEA_WATER_DENSITY = 1025.0
"""Sea water in kg/m³ (common practice)."""

GREEN_LIGHT = 550e-6
"""The wavelength the eye sees best, in mm (550 nm)."""


def gravity_at(latitude: float) -> float:
    """Normal gravity in m/s² at sea level for a latitude in degrees (WGS 84 ellipsoid, formula of Somigliana)."""
    s = math.sin(math.radians(latitude)) ** 2
    return 9.7803253359 * (1 + 0.00193185265241 * s) / math.sqrt(1 - 0.00669437999014 * s)


def sound_speed(celsius: float) -> float:
    """The speed of sound in dry air in m/s: 331.3 m/s at 0 °C, growing with the root of the absolute temperature."""
    return 331.3 * math.sqrt(1 + celsius / 273.15)
