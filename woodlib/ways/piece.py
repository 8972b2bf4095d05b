"""The piece to be built and the allowances of the shop."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, fields
from fractions import Fraction
from typing import TYPE_CHECKING, TypeAlias

from ..door import check_length, check_number
from ..errors import Problems
from ..movement.board import check_ring_angle, check_wood
from ..movement.wood import Wood
from ..shop_sizes import sold
from ..species import Species
from ..tables import metric_numbers, number
from ..units import shown

if TYPE_CHECKING:
    from pint import Quantity

AnyWood: TypeAlias = Species | Wood | str
Length: TypeAlias = "float | str | Quantity"
HOLD_AT = ("front", "middle", "back")
LONGEST_M = 6.0  # beyond any furniture; catches inches typed as metres


@dataclass(frozen=True, init=False)
class Piece:
    """A rectangular solid piece, grain along its length, and the border its owner wants.

    ``width_m`` across the grain and ``length_m`` are the finished size of the whole piece, border included (of the
    opening, for what fits into one: a drawer front, an inset door); ``border_thickness_m`` is the panel's
    thickness unless given; ``border_species`` is the panel's unless given.
    ``base_holds`` front, middle or back: where a base, if there is one, holds it fast. Sizes in metres, or text like ``"20 in"``.
    Raises :class:`InputError` with a sentence for each bad input.

    >>> seat = Piece("white oak", "20 in", "44 in", "7/8 in", border_width_m="2 in")
    >>> round(seat.width_m, 3), seat.border_thickness_m == seat.thickness_m
    (0.508, True)
    """

    species: AnyWood
    width_m: float
    length_m: float
    thickness_m: float
    border_width_m: float
    border_thickness_m: float
    ring_angle_deg: float
    border_species: AnyWood
    base_holds: str
    wood: Wood = field(init=False, repr=False, compare=False)
    border_wood: Wood = field(init=False, repr=False, compare=False)

    def __init__(
        self,
        species: AnyWood,
        width_m: Length,
        length_m: Length,
        thickness_m: Length,
        border_width_m: Length,
        border_thickness_m: Length | None = None,
        ring_angle_deg: float = 0.0,
        border_species: AnyWood | None = None,
        base_holds: str = "middle",
    ) -> None:
        problems = Problems()
        names = "panel width", "panel length", "panel thickness", "border width"
        given = width_m, length_m, thickness_m, border_width_m
        width, length, thickness, border = (_length(problems, *entry) for entry in zip(names, given, strict=True))
        own_thickness = border_thickness_m is not None
        border_thickness = _length(problems, "border thickness", border_thickness_m) if own_thickness else thickness
        check_ring_angle(problems, ring_angle_deg)
        wood = check_wood(problems, species)
        own = None if border_species == species else border_species
        border_wood = wood if own is None else check_wood(problems, own)
        if base_holds not in HOLD_AT:
            problems.add(f"base_holds is {shown(base_holds)}; it must be one of {', '.join(HOLD_AT)}.")
        problems.raise_if_any()
        sizes = width, length, thickness, border, border_thickness
        woods = species if own is None else own, base_holds, wood, border_wood
        for entry, value in zip(fields(self), (species, *sizes, ring_angle_deg, *woods), strict=True):
            object.__setattr__(self, entry.name, value)


def _length(problems: Problems, name: str, value: object) -> float:
    metres = check_length(problems, name, value)
    if metres == metres:
        check_number(problems, name, metres, "m", 0, LONGEST_M, "the kit is for furniture", above=True)
    return metres


def _default(key: str):
    return field(default_factory=lambda: number("allowances", key).middle)


@dataclass(frozen=True)
class Allowances:
    """Sizes of pins, screws and play that the shop decides; the defaults are common practice without a source.

    Lengths in metres; ``outermost_share`` is where the outer fixings sit, as a share of half the width;
    ``cutters_m`` widths of grooving cutters, all that are sold in inches unless given; ``first`` the system that sentences lead with.

    >>> Allowances().slot_clearance_m
    0.0016
    """

    pin_diameter_m: float = _default("pin_diameter")
    screw_diameter_m: float = _default("screw_diameter")
    slot_clearance_m: float = _default("slot_clearance")
    edge_cover_m: float = _default("edge_cover")
    groove_cover_m: float = _default("groove_cover")
    drawer_tongue_m: float = _default("drawer_tongue")
    button_hold_m: float = _default("button_hold")
    outermost_share: float = _default("outermost_share")
    least_wall_m: float = _default("least_wall")
    least_gap_m: float = _default("least_gap")
    lap_cover_m: float = _default("lap_cover")
    back_board_m: float = _default("back_board")
    plate_reach_m: float = _default("plate_reach")
    plate_width_m: float = _default("plate_width")
    cutters_m: tuple[float, ...] = ()
    first: str = "customary"
    panel_bevel_m: float = _default("panel_bevel")
    field_step_m: float = _default("field_step")
    slip_width_m: float = _default("slip_width")
    muntin_width_m: float = _default("muntin_width")
    thin_edging_m: float = _default("thin_edging")
    clip_tongue_m: float = _default("clip_tongue")
    clip_kerf_m: float = _default("clip_kerf")
    draw_bore_offset_m: float = _default("draw_bore_offset")
    visible_gap_m: float = _default("visible_gap")
    veneer_thickness_m: float = _default("veneer_thickness")
    sheet_coefficient: float = _default("sheet_coefficient")

    @classmethod
    def of(cls, system: str, cutters_m: Sequence[Fraction] = ()) -> Allowances:
        """Those of a shop that works in inches ("customary") or in millimetres ("metric"), and its own cutters.

        >>> Allowances.of("metric").pin_diameter_m
        0.01
        """
        metric = metric_numbers("allowances") if system == "metric" else {}
        cutters = cutters_m or tuple(size.size_m for size in sold("cutter", system))
        return cls(
            first=system,
            cutters_m=tuple(map(float, cutters)),
            **{f"{key}_m": float(value) for key, value in metric.items()},
        )

    def __post_init__(self) -> None:
        problems = Problems()
        if not self.cutters_m:
            object.__setattr__(self, "cutters_m", tuple(float(size.size_m) for size in sold("cutter")))
        for entry in (entry for entry in fields(self) if entry.name not in ("cutters_m", "first")):
            row = number("allowances", entry.name.removesuffix("_m"))
            name = entry.name.removesuffix("_m").replace("_", " ")
            if row.unit == "m":
                object.__setattr__(self, entry.name, check_length(problems, name, getattr(self, entry.name)))
            if getattr(self, entry.name) == getattr(self, entry.name):
                check_number(problems, name, getattr(self, entry.name), row.unit, row.low, row.high, row.meaning)
        problems.raise_if_any()
