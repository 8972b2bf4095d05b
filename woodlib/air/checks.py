"""What air may be: the limits of its quantities."""

from __future__ import annotations

from ..door import Limits

TEMPERATURE_C = Limits(-100.0, 200.0, "degC", "write the temperature in degrees Celsius")
RH_PERCENT = Limits(0.0, 100.0, "%", "write relative humidity in percent, for example 45", "percent", share="rh")
RH_ABOVE_ZERO = Limits(0.0, 100.0, "%", "perfectly dry air has no dew point", "percent", True, "rh")
PRESSURE_PA = Limits(10_000.0, 200_000.0, "Pa", "the sea-level pressure is 101325 Pa")
VAPOUR_PRESSURE_PA = Limits(
    0.0, 2.0e6, "Pa", "room air has about 1200 Pa, and dry air has no dew point", above_low=True
)
MOISTURE_GAIN_G_M3 = Limits(-20.0, 20.0, "g/m3", "homes usually gain 2 to 4 g/m3 in winter", "gram / meter ** 3")
