"""The chance of a crack: the smooth answer against drawing, convergence, and directions."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from references.drawn_chance import sampled_chance
from scipy.special import ndtr, ndtri

from woodlib.restraint.chance import HeldLoad, crack_chance
from woodlib.restraint.normal import normal_score, normal_share
from woodlib.restraint.relaxation import several_years


def load(glue_up=9.5, damp=12.0, dry=7.0, stiffness=786e6, ratio=1.7):
    path = several_years(glue_up, [damp, dry], 8)
    return HeldLoad(path, 0.00264 * (path - glue_up), stiffness, ratio)


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


def test_smooth_in_a_slider():
    """Second differences shrink with the square of the step: no kinks to trip an interpolation."""
    bends = []
    for step in (0.2, 0.1):
        values = [crack_chance(load(dry=7.0 + k * step), 6.48e6).sound.likely for k in (-1, 0, 1)]
        bends.append(abs(values[0] - 2 * values[1] + values[2]))
    assert bends[1] == pytest.approx(bends[0] / 4, rel=0.15)


def test_no_drying_no_crack():
    path = np.array([8.0, 10.0])
    assert flat(crack_chance(HeldLoad(path, 0.002 * (path - 8), 1e9, 1.5), 6e6)).max() < 1e-9


def test_what_is_assumed_is_listed_with_status_and_source():
    for row in crack_chance(load(), 6.48e6).assumptions:
        assert (
            row.low <= row.middle <= row.high
            and row.source
            and row.status in ("printed", "recalled", "estimated", "derived")
        )


def test_many_cases_at_once_are_the_cases_one_by_one():
    glue_up, damp, dry = np.array([8.0, 9.5, 11.0]), np.array([12.0, 13.0, 9.0]), np.array([7.0, 5.0, 6.5])
    path = np.concatenate([glue_up[None], np.tile(np.stack([damp, dry]), (8, 1))])
    many = flat(crack_chance(HeldLoad(path, 0.00264 * (path - glue_up), np.array([5e8, 7e8, 9e8]), 1.7), 6.48e6))
    for k, stiffness in enumerate((5e8, 7e8, 9e8)):
        one = flat(crack_chance(load(glue_up[k], damp[k], dry[k], stiffness), 6.48e6))
        assert many[:, k] == pytest.approx(one, abs=1e-12)


def test_normal_share_agrees_with_scipy():
    scores = np.random.default_rng(3).uniform(-12.0, 12.0, 20000)
    assert np.abs(normal_share(scores) - ndtr(scores)).max() < 1e-13
    assert [normal_score(share) for share in (1e-5, 0.3, 0.999)] == pytest.approx(ndtri([1e-5, 0.3, 0.999]), abs=1e-9)
