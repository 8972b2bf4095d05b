"""What is possible in a brief but unusual: told, and taken as written."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from ..units import both, shown, write

if TYPE_CHECKING:
    from .record import Brief

_COLD, _WARM = "winter", "summer"
# What is told, from common practice (no source): shares of the piece, of the panel's thickness, and a number of strips.
WIDE_BORDER = 0.4
THIN_BORDER = 0.4
MANY_STRIPS = 20


ROOM_C, ROOM_RH = (5.0, 35.0), (10.0, 85.0)
"""What rooms keep for a season, degC and % RH; outside it is asked about (common practice, no source)."""
STOCK_MC, FAR_OFF_PERCENT = (4.5, 19.0), 3.0
"""Moisture of stock that is ready or nearly, % MC, and the most that a meter is usually off (common practice, no source)."""
STEADY_PERCENT = 0.3  # a house as steady as that has no damper season
_ACROSS = ("drawer bottom", "drawer front", "drawer side", "back")  # as often wider than long, by their opening


def remarks_on(brief: Brief) -> tuple[str, ...]:
    """One sentence, with its line, for each thing that is more often a slip than meant; empty for a usual brief.

    >>> from woodlib.brief import read_brief
    >>> from woodlib.data_files import data_path
    >>> remarks_on(read_brief(data_path("briefs/reading_nook_seat.toml")))
    ()
    """
    found = (_short_grain, _wide_border, _thin_border, _out_of_flat, _many_strips, _no_coats, _damp_winter)
    return (*(remark for remark in (look(brief) for look in found) if remark), *_unlikely(brief))


def _short_grain(brief: Brief) -> str:
    """Boards usually run along the longer side; two swapped sizes look the same as a panel that is meant so."""
    if brief.piece.width_m <= brief.piece.length_m or brief.piece.kind in _ACROSS:
        return ""
    width, length = (shown(brief.typed[f"piece.{name}"]) for name in ("width", "length"))
    return (
        f"{brief.where('piece.width')}piece.width {width}, across the grain, is more than piece.length {length}: the "
        "grain runs along the shorter side. It is taken so; if it runs along the longer one, exchange the two."
    )


def _typed(brief: Brief, *keys: str) -> list[str]:
    return [f"{key} {shown(brief.typed[key])}" for key in keys]


def _wide_border(brief: Brief) -> str:
    """A border that leaves next to nothing of the panel is more often a slip of the unit."""
    piece = brief.piece
    for side, size in (("width", piece.width_m), ("length", piece.length_m)):
        if piece.border_width_m and piece.border_width_m > WIDE_BORDER * size:
            border, whole = _typed(brief, "piece.border_width", f"piece.{side}")
            left = both(size - 2 * piece.border_width_m, 64, 0.1, first=brief.first)
            return (
                f"{brief.where('piece.border_width')}{border} on both sides of {whole} leaves {left} of panel. It is taken "
                "so; if it is not meant, write a narrower border."
            )
    return ""


def _thin_border(brief: Brief) -> str:
    """A border far thinner than its panel cannot hold it, or be joined to it."""
    thin, thick = brief.piece.border_thickness_m, brief.piece.thickness_m
    if not thin or thin >= THIN_BORDER * thick:
        return ""
    border, panel = _typed(brief, "piece.border_thickness", "piece.thickness")
    return (
        f"{brief.where('piece.border_thickness')}{border} is far less than {panel}: a border is usually about as thick as "
        "its panel. It is taken so; check both."
    )


def _out_of_flat(brief: Brief) -> str:
    """Faces further out of flat than the panel is thick leave more wood on the floor than in the piece."""
    if brief.stock.out_of_flat_m <= brief.piece.thickness_m:
        return ""
    flat, panel = _typed(brief, "wood.out_of_flat", "piece.thickness")
    return (
        f"{brief.where('wood.out_of_flat')}{flat} is more than {panel}: planing flat would take off more than is left. It "
        "is taken so; check its unit, or cut such boards shorter first."
    )


def _many_strips(brief: Brief) -> str:
    """A panel of very many strips is more often a wrong width of the boards."""
    count = sum(board.count for board in brief.boards)
    if not count:
        return ""
    mean = sum(board.count * board.width_m for board in brief.boards) / count
    if brief.piece.width_m <= MANY_STRIPS * mean:
        return ""
    return (
        f"{brief.where('boards')}the boards are {both(mean, 16, first=brief.first)} wide on average, so a panel of piece.width "
        f"{shown(brief.typed['piece.width'])} is glued up from more than {MANY_STRIPS} strips. It is taken so; check their "
        "widths."
    )


def _no_coats(brief: Brief) -> str:
    """No coats of a finish that is named: one of the two is not meant."""
    if not brief.finish.name or brief.finish.coats != 0:
        return ""
    return (
        f"{brief.where('finish.coats')}finish.coats is 0, so the wood is taken as bare in spite of finish.name "
        f"{shown(brief.finish.name)}; write the number of coats, or leave coats out for as many as are usual."
    )


def _damp_winter(brief: Brief) -> str:
    """Where rooms are heated, winter dries the wood; the other way round is more often two exchanged tables."""
    from ..moisture.equilibrium import emc_percent

    air = {season.name.lower(): (season.temperature_c, season.rh_percent) for season in brief.house.seasons}
    moisture = {name: float(emc_percent(*of)) for name, of in air.items()}
    if moisture.get(_COLD, 0.0) <= moisture.get(_WARM, 100.0) + STEADY_PERCENT:
        return ""
    return (
        f"{brief.where('house.seasons')}winter brings the wood to {moisture[_COLD]:.1f} % MC and summer to "
        f"{moisture[_WARM]:.1f} %: the winter is damper than the summer. It is taken so; in a heated house it is "
        "usually the other way round, so check that the two are not exchanged."
    )


def _unlikely(brief: Brief) -> Iterator[str]:
    """Air that no room keeps, and stock or a meter that is far out: each more often a slip of the unit or the finger."""
    for season in brief.house.seasons:
        where = f"house.seasons.{season.name.lower()}"
        for key, value, low, high in (
            ("temperature", season.temperature_c, *ROOM_C),
            ("humidity", season.rh_percent, *ROOM_RH),
        ):
            if not low <= value <= high:
                typed = shown(brief.typed.get(f"{where}.{key}", f"{value:g}"))
                yield (
                    f"{brief.where(f'{where}.{key}')}{where}.{key} is {typed}, which rooms that are lived in do not keep. It is "
                    "taken so; check its unit, and whether it is the air of the room and not that outdoors."
                )
    moisture, doubt = brief.stock.mc_percent, brief.stock.meter_error_percent
    if moisture is not None and not STOCK_MC[0] <= moisture <= STOCK_MC[1]:
        kind = "green or wet, not yet for furniture" if moisture > STOCK_MC[1] else "drier than a heated room makes it"
        yield (
            f"{brief.where('wood.moisture')}wood.moisture is {shown(brief.typed['wood.moisture'])}: wood that is {kind}. It is "
            "taken so; read the meter again, on a fresh crosscut."
        )
    if brief.stock.meter_temperature_c is not None:
        yield (
            f"{brief.where('wood.meter_temperature')}wood.moisture is {shown(brief.typed['wood.moisture'])} in wood of "
            f"{shown(brief.typed['wood.meter_temperature'])}: a pin meter that does not correct for that means "
            f"{write(brief.stock.moisture_percent(), 'moisture')}, and it is taken so."
        )
    if doubt > FAR_OFF_PERCENT:
        yield (
            f"{brief.where('wood.meter_error')}wood.meter_error is {shown(brief.typed['wood.meter_error'])}: a meter that may be "
            "so far off settles nothing. It is taken so; weigh a slice and dry it in an oven instead."
        )
