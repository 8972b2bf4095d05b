"""Run a survey part by part: what is done is kept beside the table at once, so a survey that was stopped goes on."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Iterable
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from pathlib import Path

from ..air.climates import all_climates
from ..errors import InputError
from ..files import check_place, put
from ..picture.svg import svg
from ..units import metres
from .part import Settings, rows_of, settings_of
from .picture import map_of

Map = Callable[[Callable, list], Iterable]
"""Anything that works like ``map``: that of a pool, or of a cluster: ``lambda do, parts: client.gather(client.map(do, parts))``."""
TABLES = (".csv", ".parquet")


USUAL_WOODS = (
    "white oak",
    "red oak",
    "hard maple",
    "black cherry",
    "black walnut",
    "white ash",
    "yellow-poplar",
    "eastern white pine",
)


def write_survey(
    table: Path,
    shown: str,
    workers_wanted: int = 1,
    progress: Callable[[int, int], None] = lambda done, of: None,
    *,
    woods=(),
    places=(),
    widths=(),
    ways=(),
    cut: str = "flatsawn",
    samples: int = 400,
) -> list[str]:
    """Run a survey from words and write its table and its map; returns what to tell. Errors as :func:`survey`."""
    places = places or [climate.place for climate in all_climates()]
    settings = settings_of(woods or USUAL_WOODS, places, widths, ways, cut=cut, samples=samples)
    width_m = metres(shown, name="width of the map")
    sheet = table.with_suffix(".svg")
    if sheet.exists():
        raise InputError(f"{sheet} exists already and is left as it is; choose another name.")
    with workers(workers_wanted) as over:
        rows = survey(settings, table, over=over, progress=progress)
    picture, words = map_of(rows, width_m)
    put(svg(picture, words).encode(), sheet)
    return [f"Wrote {table.name} ({len(rows)} rows) and {sheet.name}.", words]


def survey(
    settings: Settings, target: Path, *, over: Map = map, progress: Callable[[int, int], None] = lambda done, of: None
) -> list[dict]:
    """The table of a survey, written to ``target`` (CSV, or Parquet where pyarrow is installed) and returned as rows.

    Each part is a line in ``TARGET.part`` as soon as it is done; run again with the same settings, only the missing ones
    are worked out. Raises :class:`InputError` where the file is there already, cannot be written, or another survey's
    parts are beside it.
    """
    write = _writer(target)
    if target.exists():
        raise InputError(f"{target} exists already and is left as it is; choose another name.")
    check_place(target)
    kept = target.with_name(target.name + ".part")
    done = _kept_parts(kept, settings)
    parts = settings.parts
    missing = [part for part in parts if part[1:] not in done]
    progress(len(done), len(parts))
    with kept.open("a", encoding="utf-8") as file:
        if file.tell() == 0:
            file.write(json.dumps(settings.told) + "\n")
        try:
            for (_, wood, place), rows in zip(missing, over(rows_of, missing), strict=True):
                file.write(json.dumps([wood, place, rows]) + "\n")
                file.flush()
                done[wood, place] = rows
                progress(len(done), len(parts))
        except BrokenProcessPool:
            raise InputError(
                "A worker was stopped. Nothing that was done is lost: run the same command again."
            ) from None
    table = [row for part in parts for row in done[part[1:]]]
    put(write(table), target)
    kept.unlink()
    return table


def _kept_parts(kept: Path, settings: Settings) -> dict[tuple[str, str], list[dict]]:
    """The parts that an earlier run left; a line that was cut off in the middle is taken away."""
    if not kept.exists():
        return {}
    text = kept.read_text(encoding="utf-8")
    whole, _, _ = text.rpartition("\n")
    lines = whole.splitlines()
    if whole + "\n" != text:
        put("".join(f"{line}\n" for line in lines).encode(), kept, replace=True)
    try:
        found = [json.loads(line) for line in lines]
        if found and found[0] != settings.told:
            raise ValueError
        return {(wood, place): rows for wood, place, rows in found[1:]}
    except (ValueError, TypeError):
        raise InputError(
            f"{kept} holds parts of another survey; finish that one, take the file away, or choose another name."
        ) from None


@contextmanager
def workers(count: int):
    """A ``map`` over this many processes of this machine; with one, the plain one."""
    if count <= 1:
        yield map
        return
    with ProcessPoolExecutor(count) as pool:
        yield pool.map


def _writer(target: Path) -> Callable[[list[dict]], bytes]:
    if target.suffix == ".parquet":
        try:
            import pyarrow  # noqa: F401
        except ImportError:
            raise InputError(f"{target.name}: Parquet needs pyarrow, which is not installed; write a .csv.") from None
        return _as_parquet
    if target.suffix != ".csv":
        raise InputError(f"{target.name}: a survey is written as {' or '.join(TABLES)}.")
    return _as_csv


def _as_csv(table: list[dict]) -> bytes:
    text = io.StringIO()
    writer = csv.DictWriter(text, list(table[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows(table)
    return text.getvalue().encode()


def _as_parquet(table: list[dict]) -> bytes:
    import pyarrow
    from pyarrow import parquet

    made = io.BytesIO()
    parquet.write_table(pyarrow.Table.from_pylist(table), made)
    return made.getvalue()
