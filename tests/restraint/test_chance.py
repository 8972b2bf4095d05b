"""The chance of a crack: the smooth answer against drawing, convergence, and directions."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.drawn_chance import sampled_chance
from scipy.special import ndtr, ndtri

from woodlib.moisture.equilibrium import emc_percent
from woodlib.movement.wood import wood_of
from woodlib.restraint.assumptions import assumption
from woodlib.restraint.chance import HeldLoad, crack_chance
from woodlib.restraint.elastic import elastic_constants
from woodlib.restraint.fracture import split_cost_j_m2
from woodlib.restraint.normal import normal_score, normal_share
from woodlib.restraint.relaxation import several_years
from woodlib.species import find_species


def load(glue_up=9.5, damp=12.0, dry=7.0, stiffness=786e6, ratio=1.7, width=0.45):
    path = several_years(glue_up, [damp, dry], 8)
    return HeldLoad(path, 0.00264 * (path - glue_up), stiffness, ratio, 1056e6, width, (99.0, 178.0))


def flat(chance):
    return np.array([*chance.sound, *chance.checked])


@pytest.mark.parametrize(
    "case", [load(), load(12.0), load(8.8, 10.0, 7.6), load(9.5, 14.3, 5.3), load(stiffness=1.4e9)]
)
def test_smooth_answer_agrees_with_131072_drawn_panels(case):
    assert flat(crack_chance(case, 6.48e6)) == pytest.approx(flat(sampled_chance(case, 6.48e6)), abs=0.008)


def test_drawing_converges():
    """Against 2^20 panels: the error of 2^10, 2^13 and 2^17 falls, to below one in a thousand."""
    reference = flat(sampled_chance(load(), 6.48e6, 1 << 20, seed=1))
    errors = [np.abs(flat(sampled_chance(load(), 6.48e6, 1 << power)) - reference).max() for power in (10, 13, 17)]
    assert errors[2] < 1e-3 and errors[2] < errors[1] < 0.03 and errors[0] < 0.05


def test_fixed_seed_gives_the_same_numbers():
    assert flat(sampled_chance(load(), 6e6, 4096)).tolist() == flat(sampled_chance(load(), 6e6, 4096)).tolist()


@settings(max_examples=40, deadline=None)
@given(
    st.floats(7.5, 11),
    st.floats(11, 15),
    st.floats(5, 7.4),
    st.floats(1e8, 2e9),
    st.floats(1.0, 3.0),
    st.floats(2e6, 1e7),
)
def test_directions(glue_up, damp, dry, stiffness, ratio, strength):
    chance = flat(crack_chance(load(glue_up, damp, dry, stiffness, ratio), strength))
    assert ((chance >= 0) & (chance <= 1)).all()
    assert chance[0] <= chance[1] <= chance[2] and chance[3] <= chance[4] <= chance[5]
    assert (chance[3:] >= chance[:3] - 1e-12).all()
    assert (flat(crack_chance(load(glue_up, damp, dry - 0.3, stiffness, ratio), strength)) >= chance - 1e-12).all()
    assert (flat(crack_chance(load(glue_up, damp, dry, stiffness, ratio), strength * 1.1)) <= chance + 1e-12).all()


def anchor(from_rh, to_rh, ring_angle_deg=0.0):
    """The chance of a rigidly held oak panel, 760 x 1020 x 12.7 mm, dried once between two humidities."""
    wood, oak = wood_of(find_species("white oak")), elastic_constants("white oak")
    ring = np.radians(ring_angle_deg)
    path = np.array([float(emc_percent(21.0, rh)) for rh in (from_rh, to_rh)])
    _, radial, tangential = wood.axis_strains(path[0], path)
    misfit = tangential * np.cos(ring) ** 2 + radial * np.sin(ring) ** 2
    panel = oak.panel(ring)
    spread = (0.76 * 1.02 * 0.0127 / assumption("reference_volume").middle) ** 0.2
    held = HeldLoad(path, misfit, panel.modulus_x_pa, spread, panel.modulus_x_pa, 0.76, split_cost_j_m2(panel))
    return crack_chance(held, oak.strength_across_pa(ring)).sound


def test_the_printed_chance_keeps_its_outside_anchors():
    """The Structural Conservation of Panel Paintings (Getty 1998), citing a test of rigidly held oak: 70 to 10 % RH can split it
    (0.4 to 0.7), 55 to 45 % RH does not bring it to failure (below 0.15). The careful view alone fails the second."""
    assert 0.4 < anchor(70, 10).likely < 0.7 and anchor(55, 45).likely < 0.15
    assert anchor(55, 45).high > 0.15


def test_the_chance_rises_with_drying_without_end():
    """Glued green and dried to nothing, held oak splits; what slow strain cannot make room for pulls in full."""
    chances = [
        crack_chance(load(glue_up, glue_up, dry), 5e6).sound.likely for glue_up, dry in ((12, 6), (20, 6), (29, 0))
    ]
    assert chances[0] < chances[1] < chances[2]


def test_flatsawn_cracks_sooner_than_quartersawn_and_wide_sooner_than_narrow():
    assert anchor(70, 20, 90.0).likely < 0.85 * anchor(70, 20).likely
    chances = [crack_chance(load(width=width), 6.48e6).sound.likely for width in (0.03, 0.06, 0.12, 0.5)]
    assert chances == sorted(chances) and chances[0] < 0.5 * chances[-1]


def test_smooth_in_a_slider():
    """Second differences shrink with the square of the step: no kinks to trip an interpolation."""
    bends = []
    for step in (0.2, 0.1):
        values = [crack_chance(load(dry=7.0 + k * step), 6.48e6).sound.likely for k in (-1, 0, 1)]
        bends.append(abs(values[0] - 2 * values[1] + values[2]))
    assert bends[1] == pytest.approx(bends[0] / 4, rel=0.15)


def test_no_drying_no_crack():
    path = np.array([8.0, 10.0])
    assert flat(crack_chance(HeldLoad(path, 0.002 * (path - 8), 1e9, 1.5, 1e9, 0.45, (99.0, 178.0)), 6e6)).max() < 1e-9


def test_what_is_assumed_is_listed_with_status_and_source():
    for row in crack_chance(load(), 6.48e6).assumptions:
        assert (
            row.low <= row.middle <= row.high
            and row.source
            and row.status in ("printed", "recalled", "estimated", "derived", "quoted")
        )


def test_many_cases_at_once_are_the_cases_one_by_one():
    glue_up, damp, dry = np.array([8.0, 9.5, 11.0]), np.array([12.0, 13.0, 9.0]), np.array([7.0, 5.0, 6.5])
    path = np.concatenate([glue_up[None], np.tile(np.stack([damp, dry]), (8, 1))])
    stiff, widths = np.array([5e8, 7e8, 9e8]), np.array([0.1, 0.3, 0.6])
    every = HeldLoad(path, 0.00264 * (path - glue_up), stiff, 1.7, 1056e6, widths, (99.0, 178.0))
    many = flat(crack_chance(every, 6.48e6))
    for k, stiffness in enumerate((5e8, 7e8, 9e8)):
        one = flat(crack_chance(load(glue_up[k], damp[k], dry[k], stiffness, width=widths[k]), 6.48e6))
        assert many[:, k] == pytest.approx(one, abs=1e-12)


def test_normal_share_agrees_with_scipy():
    scores = np.random.default_rng(3).uniform(-12.0, 12.0, 20000)
    assert np.abs(normal_share(scores) - ndtr(scores)).max() < 1e-13
    assert [normal_score(share) for share in (1e-5, 0.3, 0.999)] == pytest.approx(ndtri([1e-5, 0.3, 0.999]), abs=1e-9)
