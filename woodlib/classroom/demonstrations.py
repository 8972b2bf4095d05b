"""What a bench demonstration should show: the kit's own numbers for offcuts on a table, each by its name."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from math import pi

from ..air.psychrometrics import indoor_rh_percent
from ..commission import chosen_brief, commission_of
from ..moisture.drive import steady_air
from ..moisture.equilibrium import emc_percent, rh_percent_for_emc
from ..moisture.finishes import BARE, Finish, find_finish
from ..moisture.following import follow
from ..moisture.resting import resting
from ..moisture.stock import Stock
from ..movement.board import Board
from ..movement.glue_up import glue_up
from ..movement.shape import cup_m
from ..movement.spread import width_movement
from ..movement.wood import wood_of
from ..restraint.elastic import elastic_constants
from ..restraint.layers import bow_m, two_layer_curvature_per_m
from ..setting_out.holes import hole_fit, hole_pair, markings
from ..units import both, length_range, write
from ..ways.piece import Allowances

OAK, ROOM_C = "white oak", 21.0
GREEN, DRY, DAMP, SHOP = 30.0, 6.0, 12.0, 8.0  # moisture, %
SLICE_M, LONG_M, DISC_M, PANEL_M = 0.1, 0.3, 0.2, 0.5
DAMP_BOX_RH, DRY_BOX_RH = 75.0, 33.0
_numbers: dict[str, Callable[[], str]] = {}


def number(make: Callable[[], str]) -> Callable[[], str]:
    """Keep a function under its name, for the sheets to ask for."""
    _numbers[make.__name__] = cache(make)
    return make


def names() -> tuple[str, ...]:
    """The names of all numbers."""
    return tuple(_numbers)


def said(name: str) -> str:
    """A number by its name, as text.

    >>> said("air_for_dry"), said("air_for_damp")
    ('29 % RH', '65 % RH')
    """
    return _numbers[name]()


def _oak(width_m: float, ring_angle_deg: float = 0.0) -> Board:
    return Board(OAK, width_m, 0.02, LONG_M, ring_angle_deg)


@number
def air_for_dry() -> str:
    """Air in which wood comes to rest at the dry moisture of the slices."""
    return write(float(rh_percent_for_emc(ROOM_C, DRY)), "humidity")


@number
def air_for_damp() -> str:
    """Air in which wood comes to rest at the damp moisture of the slices."""
    return write(float(rh_percent_for_emc(ROOM_C, DAMP)), "humidity")


@number
def slices_apart() -> str:
    """How far apart two flatsawn slices of oak are at 6 and at 12 %."""
    return width_movement(_oak(SLICE_M), DRY, DAMP).text("metric")


@number
def quartersawn_apart() -> str:
    """The same, quartersawn."""
    return width_movement(_oak(SLICE_M, 90.0), DRY, DAMP).text("metric")


@number
def lengthwise_apart() -> str:
    """A stick of oak along the grain, dry and damp."""
    return both(_oak(SLICE_M).change(DRY, DAMP).length_m, 64, 0.1, "up", first="metric")


@number
def thousand_hundreds() -> str:
    """What a slice of 100 g oven-dry weighs at the two moistures."""
    return f"{100 + DRY:g} g and {100 + DAMP:g} g"


@number
def log_opens() -> str:
    """How wide a cut to the pith of an oak disc opens at the rim, from green to the shop's moisture."""
    _, radial, tangential = (float(strain) for strain in wood_of(OAK).axis_strains(GREEN, SHOP))
    return both(pi * DISC_M * (radial - tangential), 16, 1, first="metric")


@number
def cold_bag() -> str:
    """What a hygrometer shows in warmed air that was caught at the freezing point."""
    return write(float(indoor_rh_percent(0.0, 80.0, 20.0, 0.0)), "humidity")


@number
def colder_bag() -> str:
    """The same from a frosty morning."""
    return write(float(indoor_rh_percent(-10.0, 80.0, 20.0, 0.0)), "humidity")


def _rest(thick_m: float) -> str:
    days = resting(Stock.of(OAK, thick_m), ROOM_C, DRY_BOX_RH, DAMP).days
    return f"about {write(days.mid, 'days')}, could be {days.low:.0f} to {write(days.high, 'days')}"


@number
def thin_rests() -> str:
    """Days until an offcut 6 mm thick is at rest in the dry box."""
    return _rest(0.006)


@number
def thick_rests() -> str:
    """Days until one three times as thick is."""
    return _rest(0.018)


def _after(finish: Finish, day: float) -> str:
    stock = Stock.of(OAK, 0.012, first_finish=finish, second_finish=finish)
    moisture = follow(stock, steady_air(ROOM_C, DAMP_BOX_RH, days=28.0), SHOP).at(day)
    return (
        f"{moisture.mid:.0f} %"
        if round(moisture.low) == round(moisture.high)
        else f"{moisture.low:.0f} to {moisture.high:.0f} %"
    )


@number
def salt_rests() -> str:
    """What the damp box brings wood to."""
    return write(float(emc_percent(ROOM_C, DAMP_BOX_RH)), "moisture")


@number
def bare_week() -> str:
    """A bare offcut of 12 mm after a week in the damp box."""
    return _after(BARE, 7.0)


@number
def varnished_week() -> str:
    """One with three coats of varnish."""
    return _after(find_finish("urethane varnish", 3), 7.0)


@number
def varnished_month() -> str:
    """The same after four weeks."""
    return _after(find_finish("urethane varnish", 3), 28.0)


@number
def offcut_cups() -> str:
    """How far a flatsawn offcut cups that was cut near the pith."""
    _, radial, tangential = (float(strain) for strain in wood_of(OAK).axis_strains(DAMP, DRY))
    return both(float(cup_m(0.15, 0.05, radial, tangential)), 64, 0.1, first="metric")


def _five_strips(in_turn: bool) -> str:
    _, radial, tangential = (float(strain) for strain in wood_of(OAK).axis_strains(DAMP, DRY))
    panel = glue_up([0.1] * 5, [0.08] * 5, radial, tangential)
    return both((panel.in_turn if in_turn else panel.same_way).out_of_flat_m, 64, 0.1, first="metric")


@number
def one_arc() -> str:
    """A panel of five strips with all bark sides up."""
    return _five_strips(False)


@number
def a_ripple() -> str:
    """The same strips, every other one turned."""
    return _five_strips(True)


@number
def crossed_bows() -> str:
    """How far a crossed pair of thin slices bows over its length, from 12 to 6 %."""
    oak, moved = elastic_constants(OAK), width_movement(_oak(LONG_M), DAMP, DRY)
    along = _oak(LONG_M).change(DAMP, DRY).length_m / LONG_M
    stiff, soft = oak.strip(0.0).modulus_x_pa, oak.panel(0.0).modulus_x_pa
    curvatures = (
        two_layer_curvature_per_m(0.003, 0.003, stiff, soft, along - across / LONG_M)
        for across in (moved.low_m, moved.mid_m, moved.high_m)
    )
    low, mid, high = sorted(abs(float(bow_m(curvature, 0.15))) for curvature in curvatures)
    return length_range(low, mid, high, first="metric")


@number
def crossed_days() -> str:
    """How many days the pair takes for most of it."""
    return _rest(0.006)


@number
def panel_shrinks() -> str:
    """How far a panel half a metre wide shrinks from 12 to 6 %."""
    return width_movement(_oak(PANEL_M), DAMP, DRY).text("metric")


@number
def corner_steps() -> str:
    """What each corner of a breadboard end on that panel then shows."""
    return width_movement(_oak(PANEL_M), DAMP, DRY).times(0.5).text("metric")


@number
def sheet_moves() -> str:
    """How far a stable sheet as wide moves in the same air, at most."""
    sheet = Allowances().sheet_coefficient * (DAMP - DRY) * PANEL_M
    return both(sheet, 64, 0.1, first="metric")


@number
def screwed_strip() -> str:
    """How far a crosswise strip of oak wants to shrink between two screws."""
    return both(abs(_oak(0.25).change(DAMP, DRY).width_m), 32, 0.5, first="metric")


@number
def drawer_grows() -> str:
    """How far a drawer side as high as a hand is wide grows from the shop to a damp summer."""
    return width_movement(_oak(SLICE_M), SHOP, DAMP).text("metric")


@number
def marks_off() -> str:
    """How far an inch rule of sixteenths misses the holes of a metric pull."""
    return both(markings(hole_pair("12 in", "96 mm"), "1/16 in")[1].misfit_m, 64, 0.1, first="metric")


def _hole(rule: str) -> str:
    misfit = markings(hole_pair("12 in", "96 mm"), rule)[1].misfit_m
    return both(hole_fit("4 mm", rounding_error=misfit).needs_m, 64, 0.1, "up", first="metric")


@number
def hole_by_sixteenths() -> str:
    """The hole that a 4 mm screw needs when the marks were made with a rule of sixteenths."""
    return _hole("1/16 in")


@number
def hole_by_half_mm() -> str:
    """The same with a rule of half millimetres."""
    return _hole("0.5 mm")


@number
def seat_moves() -> str:
    """How far the panel of the invented commission moves over its year."""
    return commission_of(chosen_brief()).built.moves.text("metric")
