"""Days that a step of air takes: smooth in every argument, soon computed, and joined by lines a page can repeat.

A step of air runs off with one diffusion coefficient, that of usual indoor moisture, instead of one that changes on
the way. So the run depends on the board alone, and the two airs only scale it. Against the full solver
(``following``) between 25 and 75 % humidity: the mean within 0.5 % MC where the step is large, the days too short
where the new air is dry and too long where it is damp, by up to 40 %. The coefficient itself is doubtful by more.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from ..air.psychrometrics import saturation_pressure_pa
from ..air.sorption import sorption_slope
from ..words.decided import Decided, larger, size_of, smaller
from .diffusivity import WATER_DENSITY, siau_m2_s
from .finishes import Finish
from .rates import rate
from .two_faces import StepInside, step_inside

DAY_S = 86400.0
USUAL_PERCENT, USUAL_RH_PERCENT = 9.0, 48.0  # moisture and air for coefficient and films; at 21 degC they go together
STEPS_PERCENT = (1.0, 1.1, 1.25, 1.6, 2.1, 3.0, 4.5, 6.5, 9.5)


def usual_film_m_s(finish: Finish, specific_gravity: float, temperature_c: float) -> float:
    """Surface coefficient of a finish as ``film_coefficient_m_s``, with the slope of the sorption curve in usual air.

    >>> from woodlib.moisture.finishes import find_finish
    >>> f"{usual_film_m_s(find_finish('urethane varnish', 3), 0.68, 21.0):.1e}"
    '3.6e-09'
    """
    slope = 1.0 / float(sorption_slope(temperature_c, USUAL_RH_PERCENT))
    pressure = float(saturation_pressure_pa.kernel(temperature_c))
    return finish.permeance_kg_m2_s_pa * pressure * slope / (WATER_DENSITY * specific_gravity)


def slow_mid_fast(
    thickness_m: float, specific_gravity: float, finishes: Sequence[Finish], temperature_c: float
) -> tuple[StepInside, StepInside, StepInside]:
    """How a step of air runs off in a board of given finishes (first and second face): slow, mid and fast wood.

    >>> from woodlib.moisture.finishes import BARE
    >>> runs = slow_mid_fast(0.019, 0.60, (BARE, BARE), 20.0)
    >>> [round(float(run.time_s(0.5)) / DAY_S, 1) for run in runs]
    [15.4, 9.2, 3.2]
    """
    diffusivity = float(siau_m2_s.kernel(USUAL_PERCENT, temperature_c, specific_gravity))
    films = [usual_film_m_s(finish, specific_gravity, temperature_c) for finish in finishes]
    emission, factor = rate("surface_emission_m_s"), rate("diffusivity_factor")

    def run(factor_of: float, emission_m_s: float) -> StepInside:
        first, second = (1.0 / (1.0 / film + 1.0 / emission_m_s) for film in films)
        return step_inside(thickness_m, factor_of * diffusivity, first, second)

    return run(factor.low, emission.low), run(factor.mid, emission.mid), run(factor.high, emission.high)


def days_of_steps(inside: StepInside) -> list[float]:
    """Days until the mean is within 1 of its new home, for each size of step in ``STEPS_PERCENT``."""
    return [0.0, *(inside.time_s(1.0 / np.array(STEPS_PERCENT[1:])) / DAY_S).tolist()]


def decided_days(days: Sequence[float], change_percent: float | Decided, margin_percent: float = 1.0) -> Decided:
    """Days until the mean is within a margin of its new home, 0 where it is already; the kinks remembered.

    ``days`` from :func:`days_of_steps`, joined by straight lines: within 3 % of the days themselves, or within a tenth
    of a day and 0.2 % of the longest (searched over 1,500 boards and 140 steps each).

    >>> inside = step_inside(0.019, 2.6e-11, 1.7e-7, 1.7e-7)
    >>> round(float(decided_days(days_of_steps(inside), -5.4))), round(float(inside.time_s(1 / 5.4)) / DAY_S)
    (25, 25)
    """
    change = size_of(change_percent) * (1.0 / margin_percent)
    total: Any = 0.0
    for k in range(len(days) - 1):
        low, high = STEPS_PERCENT[k], STEPS_PERCENT[k + 1]
        share = smaller(larger((change - low) / (high - low), 0.0), 1.0)
        total = share * (days[k + 1] - days[k]) + total
    return total
