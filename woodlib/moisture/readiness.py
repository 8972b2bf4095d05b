"""Is the stock ready: thickness left after flattening, whether to rip first, and when to flatten.

The measured shape is taken as even over the board: cup as an arc across, bow as an arc along, twist as the lift of
the fourth corner when three touch. Smooth numbers come first; where one becomes a yes or no, the limit is a row of
``data/numbers.csv`` or an argument.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..door import Limits, read_values
from ..errors import Problems
from ..tables import number
from .rates import Likely, readiness_limit

SIZE = Limits(0.0, 20.0, "m", "write a size in metres, above zero", "metre", above_low=True)
WARP = Limits(-0.5, 0.5, "m", "write the gap under a straight edge in metres, for example 0.003", "metre")
ALLOWANCE = Limits(0.0, 0.05, "m", "write the allowance in metres, for example 0.0004", "metre")
THICK = Limits(0.0, 0.5, "m", "write the thickness the piece needs in metres", "metre")
_MOST_STRIPS = 12


def saw_kerf_m() -> float:
    """Width that the shop's saw turns to dust, m."""
    return number("shop practice", "saw_kerf").middle


def out_of_flat_m(cup_m: Any, bow_m: Any, twist_m: Any) -> Any:
    """Height between the highest and the lowest point of a warped face laid as level as it goes, m; broadcasts.

    cup_m across and bow_m along: depth of the arc, same sign when both make the face hollow; twist_m: lift of the
    fourth corner. Not checked here.

    >>> round(1000 * float(out_of_flat_m(0.003, 0.002, 0.004)), 2)
    6.0

    The face c y^2 + b x^2 + (T/4) x y over a square from -1 to 1: extremes at the corners, at the middle, or on an
    edge. A tilt never helps, as the form is the same seen from the other end. Own derivation.
    """
    c, b, q = np.broadcast_arrays(*(np.asarray(value, float) for value in (cup_m, bow_m, np.divide(twist_m, 4.0))))
    places = [c + b + q, c + b - q, np.zeros_like(c), c + _edge(b, q), b + _edge(c, q)]
    return np.max(places, axis=0) - np.min(places, axis=0)


def _edge(curve: np.ndarray, slope: np.ndarray) -> np.ndarray:
    """Turning value of curve s^2 + slope s for s between -1 and 1; the end value when it turns outside."""
    inside = 2.0 * np.abs(curve) > np.abs(slope)
    turning = -(slope**2) / (4.0 * np.where(inside, curve, 1.0))
    return np.where(inside, turning, curve + np.abs(slope))


@dataclass(frozen=True)
class StripPlan:
    """A board flattened as so many strips: m throughout.

    strip_width_m: each, after jointing both edges; total_width_m: all strips glued up again; out_of_flat_m: of one
    strip; thickness_m: left with both faces flat (negative: nothing is left); fits_jointer: rough strip no wider
    than the jointer.
    """

    strips: int
    strip_width_m: float
    total_width_m: float
    out_of_flat_m: float
    thickness_m: float
    fits_jointer: bool


@dataclass(frozen=True)
class Flattening:
    """Plans for one strip, two, three and so on, and the choice among them.

    plans: in order of strips; choice: the fewest strips that fit the jointer and keep the wanted thickness, None
    when there is none; reason: one sentence.
    """

    plans: tuple[StripPlan, ...]
    choice: StripPlan | None
    reason: str

    @property
    def rip_first(self) -> bool:
        """Whether the choice is to rip before flattening."""
        return self.choice is not None and self.choice.strips > 1


def flattening(
    rough_thickness_m: Any,
    width_m: Any,
    length_m: Any,
    *,
    cup_m: Any = 0.0,
    bow_m: Any = 0.0,
    twist_m: Any = 0.0,
    jointer_width_m: Any = 0.15,
    wanted_thickness_m: Any = 0.0,
    pieces: int = 1,
    kerf_m: Any = None,
    cleanup_per_face_m: Any = None,
    edge_cleanup_m: Any = None,
) -> Flattening:
    """Thickness left after flattening both faces, whole or ripped first, and the fewest strips that will do.

    Parameters
    ----------
    rough_thickness_m, width_m, length_m : the board as it is, m
    cup_m, bow_m : depth of the arc across and along, measured or predicted, m; same sign when the same face is hollow
    twist_m : lift of the fourth corner when three touch, m
    jointer_width_m : widest board the jointer takes, m
    wanted_thickness_m : thickness the piece needs, m
    pieces : how many equal lengths the board is crosscut into first; bow falls with the square, twist with the number
    kerf_m, cleanup_per_face_m, edge_cleanup_m : allowances, from ``numbers.csv`` when left out

    >>> plan = flattening(0.0254, 0.23, 1.2, cup_m=0.005, wanted_thickness_m=0.019, jointer_width_m=0.2)
    >>> plan.choice.strips, round(1000 * plan.plans[0].thickness_m, 1), round(1000 * plan.choice.thickness_m, 1)
    (2, 19.6, 23.4)

    A flat slab fits inside a warped board of thickness t and out of flat by d with thickness t - d: what the first
    face loses in one place the second loses elsewhere. A strip keeps the curve, so its cup falls with the square of
    its width and its twist in proportion.
    """
    problems = Problems()
    sizes = {
        "rough_thickness_m": (rough_thickness_m, SIZE),
        "width_m": (width_m, SIZE),
        "length_m": (length_m, SIZE),
        "cup_m": (cup_m, WARP),
        "bow_m": (bow_m, WARP),
        "twist_m": (twist_m, WARP),
        "jointer_width_m": (jointer_width_m, SIZE),
        "wanted_thickness_m": (wanted_thickness_m, THICK),
    }
    usual = {
        "kerf_m": (kerf_m, saw_kerf_m()),
        "cleanup_per_face_m": (cleanup_per_face_m, readiness_limit("cleanup_per_face_m")),
        "edge_cleanup_m": (edge_cleanup_m, number("shop practice", "edge_jointing").middle),
    }
    sizes |= {name: (default if given is None else given, ALLOWANCE) for name, (given, default) in usual.items()}
    size = {
        name: float(np.asarray(read_values(value, limits, name=name, problems=problems)).item())
        for name, (value, limits) in sizes.items()
        if not _many(value, name, problems)
    }
    if isinstance(pieces, bool) or not isinstance(pieces, int | np.integer) or not 1 <= pieces <= 50:
        problems.add(f"pieces is {pieces!r}; write how many equal lengths, a whole number from 1 to 50.")
    problems.raise_if_any()
    plans = tuple(plan for n in range(1, _MOST_STRIPS + 1) if (plan := _plan(n, int(pieces), size)).strip_width_m > 0.0)
    return _choose(plans, size)


def _many(value: Any, name: str, problems: Problems) -> bool:
    if isinstance(value, str) or np.ndim(getattr(value, "magnitude", value)) == 0:
        return False
    problems.add(f"{name} has {np.size(value)} values; give one number.")
    return True


def _plan(strips: int, pieces: int, size: dict[str, float]) -> StripPlan:
    rough = (size["width_m"] - (strips - 1) * size["kerf_m"]) / strips
    part = rough / size["width_m"]
    apart = float(out_of_flat_m(size["cup_m"] * part**2, size["bow_m"] / pieces**2, size["twist_m"] * part / pieces))
    thickness = size["rough_thickness_m"] - apart - 2.0 * size["cleanup_per_face_m"]
    width = rough - 2.0 * size["edge_cleanup_m"]
    return StripPlan(strips, width, strips * width, apart, thickness, rough <= size["jointer_width_m"])


def _choose(plans: tuple[StripPlan, ...], size: dict[str, float]) -> Flattening:
    if not plans:
        return Flattening(plans, None, "The board is too narrow to leave anything after jointing its edges.")
    good = [
        plan
        for plan in plans
        if plan.fits_jointer and plan.thickness_m >= size["wanted_thickness_m"] and plan.thickness_m > 0
    ]
    if good:
        choice = good[0]
        if choice.strips == 1:
            return Flattening(plans, choice, "Flatten it whole: it fits the jointer and keeps the thickness.")
        whole = plans[0]
        why = "it is wider than the jointer" if not whole.fits_jointer else "flattened whole it would end too thin"
        return Flattening(plans, choice, f"Rip it into {choice.strips} strips first: {why}.")
    if not any(plan.fits_jointer for plan in plans):
        return Flattening(plans, None, f"Even {plans[-1].strips} strips are wider than the jointer.")
    return Flattening(
        plans,
        None,
        "No number of strips keeps the thickness: bow and twist along the length take it; "
        "crosscut to shorter pieces first or choose thicker stock.",
    )


def strips_for_jointer(width_m: Any, jointer_width_m: Any, kerf_m: Any = None) -> int:
    """Fewest strips of a board that each fit the jointer, kerfs taken off.

    >>> strips_for_jointer(0.305, 0.152)
    2
    """
    problems = Problems()
    width = read_values(width_m, SIZE, name="width_m", problems=problems)
    jointer = read_values(jointer_width_m, SIZE, name="jointer_width_m", problems=problems)
    kerf = read_values(saw_kerf_m() if kerf_m is None else kerf_m, ALLOWANCE, name="kerf_m", problems=problems)
    problems.raise_if_any()
    # n strips and n - 1 kerfs make up the width: n (strip + kerf) - kerf.
    return max(1, int(np.ceil((float(width) + float(kerf)) / (float(jointer) + float(kerf)) - 1e-12)))


def cup_left_m(cup_m: Any) -> Any:
    """Cup that a board flattened at each time would still come to show, m, from its cup over time (n, ...).

    The cup at the end of the course less the cup cut away: flattening a board that is cupped only for now cuts the
    opposite cup into it.

    >>> [round(float(value), 4) for value in cup_left_m([0.0, 0.002, 0.001, 0.0005])]
    [0.0005, 0.0015, 0.0005, 0.0]
    """
    cup = np.asarray(cup_m, float)
    return np.abs(cup[-1] - cup)


def day_to_flatten(days: Any, cup_m: Any, flat_within_m: Any = None) -> Likely:
    """First day from which flattening leaves less cup than the limit for good, low, mid and high.

    days: (n,); cup_m: (n, 3) slow, mid, fast; flat_within_m: limit, from ``numbers.csv`` when left out.
    Straight lines between the days.

    >>> cup = np.array([[0.0, 0.0, 0.0], [0.002, 0.001, 0.0005], [0.001, 0.0002, 0.0], [0.0, 0.0, 0.0]])
    >>> [round(day, 1) for day in day_to_flatten([0, 7, 14, 28], cup, flat_within_m=0.0004)]
    [8.4, 12.2, 22.4]
    """
    problems = Problems()
    limit = read_values(
        readiness_limit("flat_within_m") if flat_within_m is None else flat_within_m,
        ALLOWANCE,
        name="flat_within_m",
        problems=problems,
    )
    days, cup = np.asarray(days, float), np.asarray(cup_m, float)
    if cup.shape != (len(np.atleast_1d(days)), 3):
        problems.add(
            f"cup_m has shape {cup.shape}; give one row of slow, mid and fast for each of the {np.size(days)} days."
        )
    problems.raise_if_any()
    left = cup_left_m(cup)
    return Likely.of(*(_last_above(days, left[:, k], float(limit)) for k in range(3)))


def _last_above(days: np.ndarray, left: np.ndarray, limit: float) -> float:
    above = np.flatnonzero(left > limit)
    if len(above) == 0:
        return float(days[0])
    n = int(above[-1])
    return float(days[n] + (days[n + 1] - days[n]) * (left[n] - limit) / (left[n] - left[n + 1]))
