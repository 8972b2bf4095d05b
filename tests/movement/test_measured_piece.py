"""Test pieces: what they move and narrow, and what they may not."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.movement.measured_piece import WITHIN_BOARD, MeasuredPiece, learn
from woodlib.movement.spread import Doubts, strain_range
from woodlib.movement.wood import Wood, width_strain, wood_of

OAK = wood_of("white oak")
factors = st.floats(0.7, 1.35)


def piece_of(factor: float, **changes) -> MeasuredPiece:
    """A piece 100 mm wide that moved ``factor`` times the average from 14 to 6 % MC, without any error."""
    given = {"first_mc_percent": 14.0, "second_mc_percent": 6.0, "ring_angle_deg": 0.0} | changes
    angle = np.radians(given["ring_angle_deg"])
    moved = float(width_strain(OAK, angle, 0.0, given["first_mc_percent"], given["second_mc_percent"], factor))
    return MeasuredPiece(0.1, 0.1 * (1.0 + moved), **given)


def test_hand_worked_update():
    """White oak, 0.00365 per % (handbook): 100 mm from 12 to 8 % MC should lose 1.46 mm and loses 1.10 mm: factor 0.753.

    Calipers: 0.1 mm nine in ten is 0.0608 mm, twice: 0.086 mm of 1.46 is 0.0589. Moistures 0.3 nine in ten is 0.182
    points of 4 each: 0.0456, twice 0.0645. Together with 0.05 within the board: variance 0.00347 + 0.00416 + 0.0025 =
    0.01013. Prior 0.0225. Factor = (1/0.0225 + 0.753/0.01013) / (1/0.0225 + 1/0.01013) = 0.830; sd = 0.0836.
    """
    learned = learn("white oak", [MeasuredPiece(0.1, 0.0989, 12.0, 8.0, ruler_m=0.0001, moisture_percent=0.3)])
    assert learned.pieces[0][0] == pytest.approx(0.753, abs=0.002)
    assert learned.factor == pytest.approx(0.830, abs=0.003) and learned.factor_sd == pytest.approx(0.0836, abs=0.001)


@given(factors, st.integers(1, 5))
def test_the_estimate_goes_towards_the_pieces_and_the_range_narrows(factor, count):
    learned = learn(OAK, [piece_of(factor)] * count)
    assert min(1.0, factor) - 1e-9 <= learned.factor <= max(1.0, factor) + 1e-9
    assert learned.factor_sd < 0.15
    more = learn(OAK, [piece_of(factor)] * (count + 1))
    assert abs(more.factor - factor) <= abs(learned.factor - factor) + 1e-12 and more.factor_sd < learned.factor_sd


@given(factors)
def test_perfect_pieces_find_the_board_and_poor_ones_hardly_count(factor):
    perfect = learn(OAK, [piece_of(factor, ruler_m=1e-6, moisture_percent=0.0)] * 50)
    assert perfect.factor == pytest.approx(factor, abs=0.01)
    poor = learn(OAK, [piece_of(factor, moisture_percent=5.0)])
    assert abs(poor.factor - 1.0) < 0.3 * abs(factor - 1.0) + 1e-9


def test_order_of_pieces_and_direction_of_the_change_do_not_matter():
    one, other = piece_of(0.9), piece_of(1.1, ring_angle_deg=45.0)
    assert learn(OAK, [one, other]).factor == pytest.approx(learn(OAK, [other, one]).factor)
    wetted = MeasuredPiece(0.1, 0.1 * (1 + float(width_strain(OAK, 0.0, 0.0, 6.0, 14.0, 0.9))), 6.0, 14.0)
    assert learn(OAK, [wetted]).factor == pytest.approx(learn(OAK, [one]).factor, abs=0.005)


def test_the_range_of_a_movement_is_narrower_with_a_test_piece():
    learned = learn(OAK, [piece_of(0.85, moisture_percent=0.2)] * 3)
    before, after = (
        strain_range(OAK, 0.0, 0.0, 8.0, 11.0),
        strain_range(learned.wood, 0.0, 0.0, 8.0, 11.0, learned.doubts),
    )
    assert after[2] - after[0] < before[2] - before[0] and after[1] == pytest.approx(
        before[1] * learned.factor, rel=1e-3
    )
    assert learned.wood.longitudinal_coefficient == OAK.longitudinal_coefficient


def test_stated_ranges_hold_nine_boards_in_ten():
    """Boards drawn from the species, pieces from the boards, readings with their errors: the range holds 90 % of them."""
    luck = np.random.default_rng(7)
    held = []
    for _ in range(600):
        board = luck.normal(1.0, 0.15)
        first, second = luck.normal((14.0, 6.0), 0.4 / 1.645)
        here = board + luck.normal(0.0, WITHIN_BOARD)
        moved = float(width_strain(OAK, 0.0, 0.0, first, second, here))
        widths = np.array([0.1, 0.1 * (1 + moved)]) + luck.normal(0.0, 0.0002 / 1.645, 2)
        learned = learn(OAK, [MeasuredPiece(*map(float, widths), 14.0, 6.0, moisture_percent=0.4)])
        held.append(abs(board - learned.factor) < 1.645 * learned.factor_sd)
    assert 0.87 <= np.mean(held) <= 0.94


def test_pieces_that_are_weighed():
    piece = MeasuredPiece.weighed((0.1, 0.099), (112.0, 108.0), 100.0, scale_g=0.5)
    assert (piece.first_mc_percent, piece.second_mc_percent) == pytest.approx((12.0, 8.0))
    assert piece.moisture_percent == pytest.approx(0.5 * np.hypot(1.0, 1.12))


def test_before_and_after_in_words():
    told = learn(OAK, [piece_of(0.8)] * 2).in_words()
    assert told.startswith("By 2 test pieces these boards move 8") and "without, 75 % to 125 % had" in told


@pytest.mark.parametrize(
    ("make", "fragment"),
    [
        (lambda: learn(OAK, []), "no test piece is given"),
        (
            lambda: learn(OAK, [MeasuredPiece(0.1, 0.0999, 8.0, 7.8)]),
            "test piece 1 was measured at 8 and 7.8 % MC, too close",
        ),
        (lambda: learn(OAK, [piece_of(1.0), piece_of(3.0)]), "test piece 2 moved 3.0 times as far as"),
        (lambda: learn(OAK, [MeasuredPiece(0.1, 0.103, 14.0, 6.0)]), "test piece 1 moved -1"),
        (lambda: learn(OAK, [0.1]), "test piece"),
        (lambda: MeasuredPiece(0.0, 0.1, 12.0, 8.0), "first_width_m is"),
        (lambda: MeasuredPiece(0.1, 0.1, -3.0, 8.0), "first_mc_percent"),
        (lambda: MeasuredPiece(0.1, 0.1, 12.0, 8.0, ring_angle_deg=120.0), "ring_angle_deg is"),
        (
            lambda: MeasuredPiece.weighed((0.1, 0.099), (99.0, 108.0), 100.0),
            "a mass of 99 g is below the oven-dry 100 g",
        ),
        (lambda: learn("unobtainium", [piece_of(1.0)]), "unobtainium"),
    ],
)
def test_refused_with_a_sentence(make, fragment):
    with pytest.raises(InputError, match=fragment):
        make()


def test_a_wood_without_scatter_stays_as_it_is():
    sure = learn(Wood("made up", 0.002, 0.003, 0.05, 0.08), [piece_of(1.0)], Doubts(species_share=0.0))
    assert sure.factor == pytest.approx(1.0, abs=1e-6)
