"""Decisions of single steps, by hand: which way comes first, what a frame leaves open, what is held rigid, what is fitted."""

from types import SimpleNamespace

import numpy as np
import pytest

from woodlib.errors import InputError
from woodlib.movement.wood import Wood
from woodlib.restraint.elastic import kindred_ratio
from woodlib.ways.frame_panel import opening_m
from woodlib.ways.grip import fitted
from woodlib.ways.held import plane_field
from woodlib.ways.index import suitability
from woodlib.ways.piece import Piece
from woodlib.ways.stiffness import panel_and_strip

PLAIN = dict.fromkeys(("solid", "keeps_border", "framed", "keeps_flat"), False) | {"usual_for": ()}
ASH = Wood("white ash", 0.00169, 0.00274, 0.049, 0.078)


def rank(bordered=True, kind="seat", *, allowed=True, level=0, unfit="", cuts=3, **way):
    verdict = SimpleNamespace(
        allowed=allowed, level=level, unfit=unfit, cuts=(0,) * cuts, way=SimpleNamespace(**(PLAIN | way))
    )
    return suitability(verdict, kind, bordered)


@pytest.mark.parametrize(
    ("better", "worse"),
    [
        ({"level": 2}, {"unfit": "too thin"}),  # what does not fit comes after the worst that does
        ({"level": 0, "unfit": "too thin"}, {"level": 1, "unfit": "too thin"}),
        ({"solid": True}, {"solid": False, "usual_for": ("seat",)}),
        ({"usual_for": ("seat",)}, {"keeps_flat": True}),
        ({"keeps_flat": True}, {"keeps_border": True}),
        ({"keeps_border": True}, {"cuts": 2}),
        ({"cuts": 2}, {"cuts": 3}),
    ],
)
def test_what_comes_first(better, worse):
    assert rank(**better) < rank(**worse)


def test_a_border_that_nobody_asked_for_comes_late_but_not_the_frame_of_a_door():
    assert rank(False) < rank(False, keeps_border=True) and rank(True, keeps_border=True) < rank(True)
    framed, usual = ({"keeps_border": True, "framed": True, "usual_for": of} for of in ((), ("seat",)))
    assert rank(False, **usual) < rank(False, **framed)


@pytest.mark.parametrize(("width", "length"), [(0.5, 0.08), (0.08, 0.5), (0.08, 0.08)])
def test_two_stiles_and_two_rails_leave_a_panel_between_them(width, length):
    with pytest.raises(InputError, match="leave a panel between them"):
        opening_m(Piece(ASH, width, length, 0.02, 0.041), width)
    assert opening_m(Piece(ASH, width, length, 0.02, 0.02), width) == pytest.approx(width - 0.04)


@pytest.mark.parametrize("woods", [("white ash", ASH), (ASH, "white ash"), (ASH, ASH)])
def test_a_wood_without_stiffness_on_either_side_is_held_rigid(woods):
    panel, border = woods
    assert plane_field(Piece(panel, 0.5, 1.1, 0.02, 0.05, border_species=border)).share == 1.0


def test_a_fitted_function_is_a_polynomial_again_wherever_its_span_lies():
    square = fitted(lambda x: x * x, ((1.0, 4.0),), (2.5,), 6.25, (5,))
    at = np.linspace(1.0, 4.0, 7)
    assert square(at) == pytest.approx(at * at, rel=1e-10)


@pytest.mark.parametrize(("ring", "ratio"), [(44.0, "ratio_et_el"), (45.0, "ratio_er_el")])
def test_a_middling_hardwood_stands_in_by_its_ratios_and_keeps_its_energy(ring, ratio):
    panel, strip, said = panel_and_strip(Piece(ASH, 0.5, 1.1, 0.02, 0.05, ring_angle_deg=ring))
    across = kindred_ratio(ratio, "hardwood").number
    assert panel.modulus_x_pa / panel.modulus_y_pa == pytest.approx(across, rel=1e-12) and len(said) == 1
    assert panel.poisson_xy / panel.modulus_x_pa == pytest.approx(strip.poisson_xy / strip.modulus_x_pa, rel=1e-12)
