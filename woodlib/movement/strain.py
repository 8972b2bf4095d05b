"""The strain of the wood's own axis behind the public door: what the kernel takes as it comes is checked here."""

from __future__ import annotations

from ..door import WETTEST_MC_PERCENT, Limits, door
from . import coefficients

_MOISTURE = Limits(0.0, WETTEST_MC_PERCENT, "% MC", "percent of oven-dry mass, for example 8", "percent", share="mc")

movement_strain = door(
    coefficient=Limits(0.0, 0.05, "", "strain per % MC, for example 0.00365", "dimensionless"),
    shrinkage=Limits(0.0, 1.0, "", "green to oven-dry as a fraction, for example 0.105", "dimensionless"),
    mc_from=_MOISTURE,
    mc_to=_MOISTURE,
    fibre_saturation=Limits(10.0, 60.0, "% MC", "usually 30", "percent", share="mc"),
)(coefficients.movement_strain)
