"""A brief after reading: frozen records in SI, with what was typed kept beside them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import cached_property
from math import hypot
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ..errors import InputError, MissingDataError
from ..tables import number
from ..units import exact_metres, shown
from .shop import Shop

if TYPE_CHECKING:
    from ..air.rooms import Room
    from ..air.year import Year
    from ..moisture.finishes import Finish as TableFinish
    from ..movement.measured_piece import Learned, MeasuredPiece
    from ..movement.months import MonthlyMoisture
    from ..movement.spread import Doubts
    from ..species import Species


@dataclass(frozen=True)
class Piece:
    """The panel and the border that the client has in mind; width is across the grain, 0 deg is flatsawn."""

    kind: str
    width_m: float
    length_m: float
    thickness_m: float
    border_width_m: float | None = None
    border_thickness_m: float | None = None
    side_thickness_m: float | None = None
    ring_angle_deg: float = 0.0
    edge_joints: str = "dowels"
    panel: str = ""
    keep: str = ""
    ends: str = ""
    base: str = ""
    base_holds: str = "middle"
    lifts: bool = False


@dataclass(frozen=True, kw_only=True)
class Stock:
    """The wood on the bench: its name, its moisture today (or the air it rests in) and the month of gluing up."""

    species: str
    month: int
    own_species: Path | None = None
    mc_percent: float | None = None
    shop_temperature_c: float | None = None
    shop_rh_percent: float | None = None
    meter_error_percent: float = 1.0
    meter_temperature_c: float | None = None
    out_of_flat_m: float = 0.0

    def moisture_percent(self) -> float:
        """Moisture content today in percent: as metered, by the wood's temperature where that is said, or the equilibrium
        with the air of the shop."""
        if self.mc_percent is not None and self.meter_temperature_c is None:
            return self.mc_percent
        if self.mc_percent is not None:
            from ..moisture.meter import metered_percent

            return float(metered_percent(self.mc_percent, self.meter_temperature_c))
        from ..moisture.equilibrium import emc_percent

        return float(emc_percent(self.shop_temperature_c, self.shop_rh_percent))


@dataclass(frozen=True)
class Finish:
    """Finish by name and number of coats, None for as many as are usual; an empty name, or no coats, is bare wood."""

    name: str = ""
    coats: int | None = None


@dataclass(frozen=True)
class Season:
    """One typed season, or a month, of indoor air."""

    name: str
    temperature_c: float
    rh_percent: float


@dataclass(frozen=True)
class House:
    """Where the year of air comes from: ``source`` is seasons, log, weather or climate.

    A log may stand beside weather or climate, which then fill the months that it lacks. ``log`` holds what is said about
    a log, by the names that :func:`woodlib.air.hygrometer_log.read_hygrometer_log` has for it.
    """

    source: str
    seasons: tuple[Season, ...] = ()
    hemisphere: str = "north"
    log_path: Path | None = None
    log: Mapping[str, str] = field(default_factory=dict)
    weather: Path | None = None
    place: str = ""
    kind: str = ""
    heating_set_point_c: float | None = None
    cooling_set_point_c: float | None = None
    warmer_k: float | None = None
    moisture_gain_g_m3: float | None = None
    summer_moisture_gain_g_m3: float | None = None
    humidifier_holds_percent: float | None = None
    dehumidifier_holds_percent: float | None = None

    @property
    def paths(self) -> tuple[Path, ...]:
        """The files this air is read from."""
        return tuple(path for path in (self.log_path, self.weather) if path is not None)

    def room(self) -> Room:
        """What the house does to the outdoor air: its kind, with what else is said of it."""
        from ..air.rooms import all_kinds, find_kind, with_settings

        return with_settings(
            find_kind(self.kind) if self.kind else all_kinds()[0],
            set_point_c=self.heating_set_point_c,
            cooled_to_c=self.cooling_set_point_c,
            warmer_k=self.warmer_k,
            winter_gain_g_m3=self.moisture_gain_g_m3,
            summer_gain_g_m3=self.summer_moisture_gain_g_m3,
            rh_at_least_percent=self.humidifier_holds_percent,
            rh_at_most_percent=self.dehumidifier_holds_percent,
        )

    def year(self) -> Year:
        """A year of the air in this house, read once. Raises :class:`InputError` for a log or weather file with bad contents."""
        return self._year

    @cached_property
    def _year(self) -> Year:
        from ..air.house_year import filled, house_year

        if self.source == "seasons":
            return self.seasonal()
        if self.source != "log":
            return house_year(self.outdoors(), self.room())
        return filled(self.outdoors(), self.logged(), self.room()) if self.weather or self.place else self.logged()

    def seasonal(self) -> Year:
        """The year from the seasons as typed."""
        from ..air.seasons import year_from_seasons

        typed = {season.name: (season.temperature_c, season.rh_percent) for season in self.seasons}
        return year_from_seasons(typed, hemisphere=self.hemisphere)

    def logged(self) -> Year:
        """The year from the log, read once. Raises :class:`InputError` for a single month with nothing to fill the others from."""
        return self._logged

    @cached_property
    def _logged(self) -> Year:
        from ..air.hygrometer_log import read_hygrometer_log

        year = read_hygrometer_log(self.log_path, **self.log)
        if len(year.missing_months) == 11 and not (self.weather or self.place):
            raise InputError(
                f"the log holds readings of {year.driest().name} only, and one month says nothing of a year; write climate or "
                "weather beside it, which fill the other months, or log four weeks of another season too."
            )
        return year

    def outdoors(self) -> Year:
        """The year outside, from the weather file or the place."""
        from ..air.climates import year_from_climate
        from ..air.weather_file import read_weather_file

        return read_weather_file(self.weather) if self.weather else year_from_climate(self.place)


@dataclass(frozen=True)
class Hardware:
    """Something screwed on at two fixed points; ``runs`` is ``across the grain`` or ``along the grain``.

    ``inset_m`` of the holes' line from the front edge, ``middle_m`` between them from the left end; the two change
    places where it runs across the grain. None where the brief leaves it to the shop's practice.
    """

    name: str
    centres_m: float
    runs: str
    inset_m: float | None = None
    middle_m: float | None = None
    screw_m: float | None = None
    fixing: str = "bolt through"


@dataclass(frozen=True)
class BoardOnHand:
    """A rough board on hand, ``count`` alike."""

    name: str
    width_m: float
    length_m: float
    thickness_m: float
    count: int = 1


@dataclass(frozen=True)
class TestPiece:
    """A piece of the boards at two moistures: by meter, or by its weight beside its oven-dry weight."""

    __test__ = False  # for pytest, which takes the name for a test

    first_width_m: float
    second_width_m: float
    first_mc_percent: float | None = None
    second_mc_percent: float | None = None
    first_mass_g: float | None = None
    second_mass_g: float | None = None
    oven_dry_g: float | None = None
    ring_angle_deg: float | None = None
    ruler_m: float | None = None
    meter_error_percent: float | None = None

    def measured(self, ring_angle_deg: float, meter_error_percent: float) -> MeasuredPiece:
        """The measurement; rings and meter are the boards' own where it has none. Raises :class:`InputError`."""
        from ..movement.measured_piece import MeasuredPiece

        metered, weighed = (
            (self.first_mc_percent, self.second_mc_percent),
            (self.first_mass_g, self.second_mass_g, self.oven_dry_g),
        )
        rings = ring_angle_deg if self.ring_angle_deg is None else self.ring_angle_deg
        ruler = {} if self.ruler_m is None else {"ruler_m": self.ruler_m}
        widths = self.first_width_m, self.second_width_m
        first, second, dry = weighed
        if first is not None and second is not None and dry is not None and metered == (None, None):
            return MeasuredPiece.weighed(widths, (first, second), dry, ring_angle_deg=rings, **ruler)
        if None in metered or weighed != (None, None, None):
            raise InputError(
                "test_piece needs two moistures beside its two widths: write first_moisture and second_moisture, or "
                "first_weight, second_weight and oven_dry_weight, not some of both."
            )
        error = meter_error_percent if self.meter_error_percent is None else self.meter_error_percent
        return MeasuredPiece(*widths, *metered, rings, moisture_percent=error, **ruler)  # type: ignore[arg-type]


@dataclass(frozen=True, kw_only=True)
class Brief:
    """One commission. ``typed`` holds every value as it stands in the file, by dotted key.

    ``constructions`` empty means all; ``handout`` maps a study's key to its inputs' start values as typed;
    ``units`` is ``inches`` or ``millimetres``, whichever is written first.
    """

    path: Path
    title: str
    maker: str = ""
    maker_contact: str = ""
    client: str = ""
    notes: str = ""
    units: str = "inches"
    constructions: tuple[str, ...] = ()
    piece: Piece
    stock: Stock
    finish: Finish
    house: House
    hardware: tuple[Hardware, ...]
    boards: tuple[BoardOnHand, ...]
    test_piece: tuple[TestPiece, ...] = ()
    shop: Shop = Shop()
    handout: Mapping[str, Mapping[str, Any]]
    typed: Mapping[str, Any] = field(repr=False)
    lines: Mapping[str, int] = field(repr=False)

    @property
    def first(self) -> str:
        """The same preference as the writing functions of ``units`` spell it: ``customary`` or ``metric``."""
        return "customary" if self.units == "inches" else "metric"

    @property
    def remarks(self) -> tuple[str, ...]:
        """What is possible but unusual in this brief, one sentence each."""
        from .remarks import remarks_on

        return remarks_on(self)

    def year(self) -> Year:
        """A year of the air in the house; see :meth:`House.year`."""
        return self.house.year()

    def table_finish(self) -> TableFinish:
        """The finish from the table; bare wood where it names none, or no coats of it.

        Raises :class:`InputError` for a finish, or a number of coats, that no table has.
        """
        from ..moisture.finishes import BARE, find_finish

        bare = not self.finish.name or self.finish.coats == 0
        return BARE if bare else find_finish(self.finish.name, self.finish.coats)

    def months(self) -> tuple[MonthlyMoisture, Doubts]:
        """The wood's own year in this house under its finish, and how far off the numbers may be.

        A wood whose density no table has is taken to follow the air in full; a board that nothing seals is washed.
        """
        from ..moisture.stock import Stock as Board
        from ..movement.months import monthly_moisture, months_inside
        from ..movement.spread import doubts_in

        year, finish = self.year(), self.table_finish()
        doubts = doubts_in(year, self.stock.meter_error_percent)
        learned = self.learned()
        doubts = replace(doubts, species_share=learned.doubts.species_share) if learned else doubts
        try:
            board = Board.of(self.species(), self.piece.thickness_m, first_finish=finish, second_finish=finish)
        except MissingDataError:
            return monthly_moisture(year), doubts
        months, own = months_inside(year, board)
        washed = (
            number("moisture", "washing_percent").middle if self.piece.kind == "board" and finish.coats == 0 else 0.0
        )
        return months, replace(doubts, air_percent=hypot(doubts.air_percent, own, washed))

    def learned(self) -> Learned | None:
        """What the test pieces say about the boards; None without any."""
        from ..movement.measured_piece import learn

        pieces = [
            piece.measured(self.piece.ring_angle_deg, self.stock.meter_error_percent) for piece in self.test_piece
        ]
        return learn(self.kind_of_wood(), pieces) if pieces else None

    def kind_of_wood(self) -> Species:
        """The wood, from the maker's own table if the brief names one, else from the catalogue."""
        return species_of(self.stock.species, self.stock.own_species)

    def species(self) -> Species:
        """The same as its boards move, by their test pieces."""
        from ..movement.measured_piece import boards_of

        learned = self.learned()
        return boards_of(self.kind_of_wood(), learned) if learned else self.kind_of_wood()

    def exact_m(self, key: str) -> Fraction:
        """A length of the brief as an exact fraction of a metre, for setting out: ``exact_m("piece.width")``."""
        if key not in self.typed:
            raise InputError(f"{shown(key)} is not given in {self.path.name}; given are {', '.join(self.typed)}.")
        return exact_metres(self.typed[key], name=key)

    @property
    def joins(self) -> tuple[Fraction, str] | None:
        """Thickness of what the piece is joined to, m, with its key: the border, or a drawer's sides; None where not said."""
        if self.piece.kind == "drawer bottom" and "piece.border_thickness" not in self.typed:
            key = "piece.side_thickness"
            usual = Fraction(127, 10_000) if self.units == "inches" else Fraction(12, 1000)
            return (self.exact_m(key), key) if key in self.typed else (usual, "usual sides of a drawer")
        key = "piece.border_thickness"
        return (self.exact_m(key), key) if key in self.typed else None

    def where(self, key: str) -> str:
        """Where a key stands, to put in front of a sentence about it: ``seat.toml, line 12: ``."""
        while key and key not in self.lines:
            key = key.rpartition(".")[0]
        return f"{self.path.name}, line {self.lines[key]}: " if key else f"{self.path.name}: "


def species_of(name: str, own_species: Path | None) -> Species:
    """A wood by name, looked for in the maker's own table first."""
    from ..species import find_species

    if own_species is None:
        return find_species(name)
    from ..species import read_own_species

    return find_species(name, own=read_own_species(own_species))
