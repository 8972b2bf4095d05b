"""What is possible in a brief but unusual: told, and taken as written."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..units import shown

if TYPE_CHECKING:
    from .record import Brief

_COLD, _WARM = "winter", "summer"


def remarks_on(brief: Brief) -> tuple[str, ...]:
    """One sentence, with its line, for each thing that is more often a slip than meant; empty for a usual brief.

    >>> from woodlib.brief import read_brief
    >>> from woodlib.data_files import data_path
    >>> remarks_on(read_brief(data_path("briefs/reading_nook_seat.toml")))
    ()
    """
    return tuple(remark for remark in (_short_grain(brief), _damp_winter(brief)) if remark)


def _short_grain(brief: Brief) -> str:
    """Boards usually run along the longer side; two swapped sizes look the same as a panel that is meant so."""
    if brief.piece.width_m <= brief.piece.length_m:
        return ""
    width, length = (shown(brief.typed[f"piece.{name}"]) for name in ("width", "length"))
    return (
        f"{brief.where('piece.width')}piece.width {width}, across the grain, is more than piece.length {length}: the "
        "grain runs along the shorter side. It is taken so; if it runs along the longer one, exchange the two."
    )


def _damp_winter(brief: Brief) -> str:
    """Where rooms are heated, winter dries the wood; the other way round is more often two exchanged tables."""
    from ..moisture.equilibrium import emc_percent

    air = {season.name.lower(): (season.temperature_c, season.rh_percent) for season in brief.house.seasons}
    moisture = {name: float(emc_percent(*of)) for name, of in air.items()}
    if moisture.get(_COLD, 0.0) <= moisture.get(_WARM, 100.0):
        return ""
    return (
        f"{brief.where('house.seasons')}winter brings the wood to {moisture[_COLD]:.1f} % MC and summer to "
        f"{moisture[_WARM]:.1f} %: the winter is damper than the summer. It is taken so; in a heated house it is "
        "usually the other way round, so check that the two are not exchanged."
    )
