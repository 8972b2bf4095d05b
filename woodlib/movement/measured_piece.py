"""What a test piece says about the boards it was cut from: the species' average, moved and narrowed by measurements.

A board's shrinkage is its species' average times a factor, normal about 1 with the scatter of the species. Each piece
measured at two moistures gives that factor once more, as sure as its ruler, its moistures and its rings are. Both are
normal, so they combine by their weights (conjugate normal): the estimate moves and the range narrows as far as the
measurements deserve, and a poor measurement hardly counts.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ..door import check_kind, check_moisture, check_number
from ..errors import InputError, Problems
from ..species import Species
from ..species.value import Value
from .spread import NINETY_PERCENT_HALF_WIDTH, USUAL_DOUBTS, Doubts, check_doubts, end_effect, start_effect
from .wood import Wood, width_strain, wood_of

WITHIN_BOARD = 0.05  # of shrinkage from place to place in one board, one standard deviation; judgement, no source
BELIEVED = 4.0  # standard deviations between species and piece; beyond, it is a slip
RULER_M = 0.0002  # nine readings in ten, good calipers or a fine rule; common practice, no source
_RING_DEG = 5.0  # nine in ten, rings seen on the end of a small piece; common practice, no source


@dataclass(frozen=True)
class MeasuredPiece:
    """One piece at two moistures, or a fresh slice beside one from another room: widths across the grain in metres,
    moistures in % MC. ``ruler_m`` and ``moisture_percent`` hold nine readings in ten."""

    first_width_m: float
    second_width_m: float
    first_mc_percent: float
    second_mc_percent: float
    ring_angle_deg: float = 0.0
    ruler_m: float = RULER_M
    moisture_percent: float = 1.0

    def __post_init__(self) -> None:
        problems = Problems()
        for name in ("first_width_m", "second_width_m"):
            check_number(problems, name, getattr(self, name), "m", 0.001, 6.0, "write the width of the test piece")
        for name in ("first_mc_percent", "second_mc_percent"):
            check_moisture(problems, name, getattr(self, name))
        check_number(problems, "ring_angle_deg", self.ring_angle_deg, "degrees", 0, 90, "0 is flatsawn, 90 quartersawn")
        check_number(problems, "ruler_m", self.ruler_m, "m", 1e-6, 0.01, "calipers read to about 0.0002 m")
        check_number(problems, "moisture_percent", self.moisture_percent, "points", 0, 10, "a meter is good to about 1")
        problems.raise_if_any()

    @classmethod
    def weighed(
        cls,
        widths_m: tuple[float, float],
        masses_g: tuple[float, float],
        oven_dry_g: float,
        *,
        scale_g: float = 0.1,
        ring_angle_deg: float = 0.0,
        ruler_m: float = RULER_M,
    ) -> MeasuredPiece:
        """A piece whose moistures come from its weight: weighed twice, and once more oven-dry.

        scale_g: nine readings of the scale in ten lie within this.

        >>> piece = MeasuredPiece.weighed((0.1000, 0.0985), (110.0, 106.0), 100.0)
        >>> piece.first_mc_percent, piece.second_mc_percent, round(piece.moisture_percent, 2)
        (10.0, 6.0, 0.15)
        """
        problems = Problems()
        for name, value in (("oven_dry_g", oven_dry_g), ("first mass", masses_g[0]), ("second mass", masses_g[1])):
            check_number(problems, name, value, "g", 0.1, 1e5, "weigh the piece in grams")
        problems.raise_if_any()
        if min(masses_g) < oven_dry_g:
            raise InputError(
                f"a mass of {min(masses_g):g} g is below the oven-dry {oven_dry_g:g} g; the oven-dry mass is the lowest that "
                "a piece can have, so weigh it again."
            )
        first, second = (100.0 * (mass - oven_dry_g) / oven_dry_g for mass in masses_g)
        doubt = 100.0 * scale_g / oven_dry_g * float(np.hypot(1.0, max(masses_g) / oven_dry_g))
        return cls(*widths_m, first, second, ring_angle_deg, ruler_m, doubt)


@dataclass(frozen=True)
class Learned:
    """The boards after the pieces. ``wood`` and ``doubts`` take the place of the species' own; ``factor`` and
    ``factor_sd`` are the boards' shrinkage over the species' average, and ``pieces`` the same from each piece alone."""

    wood: Wood
    doubts: Doubts
    factor: float
    factor_sd: float
    pieces: tuple[tuple[float, float], ...]

    def in_words(self, before: Doubts = USUAL_DOUBTS) -> str:
        """One sentence: before and after, in per cent of the species' average."""
        low, high = (self.factor + side * NINETY_PERCENT_HALF_WIDTH * self.factor_sd for side in (-1.0, 1.0))
        usual = [1.0 + side * NINETY_PERCENT_HALF_WIDTH * before.species_share for side in (-1.0, 1.0)]
        one = "the test piece" if len(self.pieces) == 1 else f"{len(self.pieces)} test pieces"
        shares = [f"{100.0 * share:.0f} %" for share in (self.factor, low, high, *usual)]
        return (
            f"By {one} these boards move {shares[0]} of the average of {self.wood.name} (nine in ten: {shares[1]} to "
            f"{shares[2]}); without, {shares[3]} to {shares[4]} had to be reckoned with."
        )


def learn(species: object, pieces: Sequence[MeasuredPiece], doubts: Doubts = USUAL_DOUBTS) -> Learned:
    """What pieces of the boards to be used say about them.

    species: a name, a species or a :class:`Wood`; doubts: before the pieces. Raises :class:`InputError` for a piece whose
    two moistures lie too close together to tell anything, or that moved as this species cannot.

    >>> learned = learn("white oak", [MeasuredPiece(0.1000, 0.0990, 12.0, 8.0, moisture_percent=0.3, ruler_m=0.0001)])
    >>> round(learned.factor, 2), round(learned.factor_sd, 2)
    (0.78, 0.08)
    """
    problems = Problems()
    check_doubts(problems, doubts)
    for piece in pieces:
        check_kind(problems, "test piece", piece, MeasuredPiece, "MeasuredPiece(0.1, 0.099, 12, 8)")
    if not pieces:
        problems.add("no test piece is given; measure one at two moistures.")
    problems.raise_if_any()
    wood = wood_of(species)  # type: ignore[arg-type]
    found = [_factor_of(wood, piece, doubts, place) for place, piece in enumerate(pieces, 1)]
    prior = max(doubts.species_share, 1e-6)
    factor, left = together(prior, found)
    return Learned(_scaled(wood, factor), replace(doubts, species_share=left / factor), factor, left, tuple(found))


def together(kind_sd: Any, pieces: Sequence[tuple[Any, Any]]) -> tuple[Any, Any]:
    """The boards' factor and one standard deviation of it, from the scatter of their kind and (factor, sd) of each piece.

    >>> [round(number, 3) for number in together(0.15, [(0.753, 0.0873)])]
    [0.83, 0.084]
    """
    weights = [kind_sd**-2.0, *((sd**2 + WITHIN_BOARD**2) ** -1.0 for _, sd in pieces)]
    values = [1.0, *(factor for factor, _ in pieces)]
    return sum(weight * value for weight, value in zip(weights, values, strict=True)) / sum(weights), sum(
        weights
    ) ** -0.5


def factor_by_piece(
    wood: Wood,
    moved: Any,
    first_width_m: Any,
    first_mc: Any,
    second_mc: Any,
    ring_rad: float,
    ruler_m: Any,
    within: Any,
) -> tuple[Any, Any]:
    """(factor, one standard deviation): how much more than the average a piece moved, by its ruler, its moistures, its rings.

    moved: change of its width over its width; ruler_m and within (% MC) hold nine readings in ten. Broadcasts, unchecked.
    """
    at = ring_rad, 0.0, first_mc, second_mc
    expected = width_strain(wood, *at)
    ruler = ruler_m / NINETY_PERCENT_HALF_WIDTH * np.sqrt(2.0) / first_width_m
    tilt = np.radians(_RING_DEG / NINETY_PERCENT_HALF_WIDTH)
    rings = 0.5 * (
        width_strain(wood, ring_rad + tilt, *at[1:]) - width_strain(wood, max(ring_rad - tilt, 0.0), *at[1:])
    )
    moist = [effect(wood, *at, within) for effect in (start_effect, end_effect)]
    error = np.sqrt(ruler**2 + rings**2 + moist[0] ** 2 + moist[1] ** 2)
    return moved / expected, error / np.abs(expected)


def _factor_of(wood: Wood, piece: MeasuredPiece, doubts: Doubts, place: int) -> tuple[float, float]:
    """How much more than the species' average a piece moved, and one standard deviation of that."""
    moistures = piece.first_mc_percent, piece.second_mc_percent
    ring = float(np.radians(piece.ring_angle_deg))
    moved = piece.second_width_m / piece.first_width_m - 1.0
    with np.errstate(divide="ignore", invalid="ignore"):  # two equal moistures tell nothing, and are refused
        found = factor_by_piece(
            wood, moved, piece.first_width_m, *moistures, ring, piece.ruler_m, piece.moisture_percent
        )
    factor, sd = map(float, found)
    if not sd <= 1.0:
        raise InputError(
            f"test piece {place} was measured at {piece.first_mc_percent:g} and {piece.second_mc_percent:g} % MC, too close "
            "together for its ruler and its moistures to tell anything; dry or wet it further, or measure a wider piece."
        )
    if abs(factor - 1.0) > BELIEVED * float(np.hypot(sd, doubts.species_share)):
        raise InputError(
            f"test piece {place} moved {factor:.1f} times as far as {wood.name} does on average, which no board of it does; "
            "check its widths, its moistures, its rings and the species."
        )
    return factor, sd


_ACROSS = ("radial_coefficient", "tangential_coefficient", "radial_shrinkage", "tangential_shrinkage")


def _scaled(wood: Wood, factor: float) -> Wood:
    """The wood of boards that move ``factor`` times the average across the grain."""
    return replace(wood, **{name: factor * getattr(wood, name) for name in _ACROSS})


def boards_of(species: Species, learned: Learned) -> Species:
    """The species with the shrinkage of the boards at hand in place of its average."""
    values = dict(species.values)
    for key, value in species.values.items():
        if key.startswith(_ACROSS):
            note = f"{learned.factor:.2f} times {value.number:.4g} ({value.status}), by test piece"
            values[key] = Value(learned.factor * value.number, value.unit, "own", value.source, note)
    return replace(species, values=values)
