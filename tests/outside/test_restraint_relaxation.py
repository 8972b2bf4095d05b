"""Published relaxation of wood held across its grain.

Toratti & Svensson 2000 and Svensson & Toratti 2002 (abstracts): one moisture cycle adds about 5 times the elastic
strain, several about 10 times. J. Wood Sci. 2019 on clamped wood, extrapolated to 50 years indoors: 0.15 of the stress
is left in the elastic range, 0.20 to 0.40 in the plastic. Tolerances as those abstracts allow: a factor of two, and
0.1 to 0.5.
"""

import numpy as np
import pytest
from references.relaxation import many_season_peak_pa

from woodlib.restraint.assumptions import assumption
from woodlib.restraint.relaxation import relaxation_factor, relaxed_path_pa, several_years


@pytest.mark.parametrize(("cycles", "expected"), [(1, 5.0), (2, 10.0)])
def test_creep_in_moisture_cycles(outside, cycles, expected):
    """Under constant stress the model creeps m times the moisture travelled, in elastic strains; 10 points a cycle."""
    got = assumption("relaxation_rate").middle * 10.0 * cycles
    outside(
        "Toratti & Svensson 2000, 2002", f"creep over elastic strain, {cycles} cycle(s)", expected, got, expected / 2
    )


def test_stress_left_after_a_season(outside):
    rate, share = assumption("relaxation_rate"), assumption("delayed_share")
    got = float(relaxation_factor(5.0, rate.middle, share.middle))
    outside("J. Wood Sci. 2019, clamped wood", "share of stress left after 5 % (0.1 to 0.5)", 0.3, got, 0.2)


def test_many_seasons_against_the_closed_form(outside):
    closed = float(many_season_peak_pa(2.07, 5.0, 0.47, 0.4))
    outside("many-season peak by hand", "tension peak, m 0.47", 2.598, closed, 0.001, "MPa")
    path = several_years(7.0, [12.0, 7.0], 2)
    stress = relaxed_path_pa(path, path - 7.0, 2.07, 0.47, 0.4)
    outside("many-season peak by hand", "year 1, glued at the driest", 2.573, float(stress[2]), 0.002, "MPa")
    outside("many-season peak by hand", "year 2, integrated", 2.598, float(stress[4]), 0.013, "MPa")


def test_slow_relaxation_settles_by_year_five(outside):
    path = several_years(7.0, [12.0, 7.0], 5)
    stress = relaxed_path_pa(path, path - 7.0, 2.07, 0.25, 0.4)
    closed = float(many_season_peak_pa(2.07, 5.0, 0.25, 0.4))
    outside("many-season peak by hand", "year 5, m 0.25", closed, float(stress[-1]), 0.005 * closed, "MPa")
    assert np.isfinite(stress).all()
