"""A survey: sampled boards and houses agree with the kit's own answer for one, nothing is lost, memory is bounded."""

import csv
import json
import tracemalloc
from concurrent.futures.process import BrokenProcessPool
from dataclasses import replace

import dask
import numpy as np
import pytest

from woodlib.air.climates import year_from_climate
from woodlib.air.house_year import house_year
from woodlib.air.rooms import all_kinds
from woodlib.errors import InputError
from woodlib.moisture.finishes import find_finish
from woodlib.moisture.stock import Stock
from woodlib.movement.months import months_inside
from woodlib.movement.spread import doubts_in
from woodlib.survey.part import MOST_BOARDS, rows_of, settings_of
from woodlib.survey.picture import map_of
from woodlib.survey.run import survey, workers, write_survey
from woodlib.ways.index import free_movement
from woodlib.ways.piece import Piece
from woodlib.ways.registry import every_way

SMALL = settings_of(["white ash", "eastern white pine"], ["Chicago", "Lisbon"], ["12 in", "24 in"], samples=100)


@pytest.fixture(scope="module")
def rows():
    return [row for part in SMALL.parts for row in rows_of(part)]


@pytest.mark.parametrize("place", ["Chicago", "Lisbon", "Helsinki"])
def test_sampled_boards_and_houses_fill_the_range_that_one_answer_gives(place):
    """The middle of the draws is the kit's middle house, nine in ten of them about its range; 400 draws, so within a fifth."""
    settings = settings_of(["white ash"], [place], ["24 in"], ["frame_panel"])
    (row,) = rows_of((settings, "white ash", place))
    year, varnish = house_year(year_from_climate(place), all_kinds()[0]), find_finish("urethane varnish", 3)
    stock = Stock.of("white ash", settings.thickness_m, first_finish=varnish, second_finish=varnish)
    months, doubt = months_inside(year, stock)
    doubts = doubts_in(year, 1.0)
    doubts = replace(doubts, air_percent=float(np.hypot(doubts.air_percent, doubt)))
    piece = Piece("white ash", "24 in", "44 in", "7/8 in", "2 in")
    alone = free_movement(piece, 8.0, months, doubts)
    assert row["moves_half_m"] == pytest.approx(alone.mid_m, rel=0.15)
    assert 0.4 < (row["moves_high_m"] - row["moves_low_m"]) / (alone.high_m - alone.low_m) < 1.2


def test_what_is_wider_or_livelier_is_worse(rows):
    def share(wood, place, width):
        return next(
            row["trouble_share"]
            for row in rows
            if (row["wood"], row["place"], row["way"]) == (wood, place, "glued_border") and row["width_m"] == width
        )

    assert share("eastern white pine", "Chicago", 0.6096) >= share("eastern white pine", "Chicago", 0.3048)
    assert share("white ash", "Lisbon", 0.6096) < share("white ash", "Chicago", 0.6096)
    moves = {
        row["width_m"]: row["moves_half_m"] for row in rows if (row["wood"], row["place"]) == ("white ash", "Chicago")
    }
    assert moves[0.6096] == pytest.approx(2 * moves[0.3048], abs=2e-6)


def test_a_survey_that_was_stopped_goes_on_where_it_was(tmp_path):
    whole, stopped = tmp_path / "whole.csv", tmp_path / "stopped.csv"
    survey(SMALL, whole)
    tried = []

    def killed(do, parts):
        for part in parts[:2]:
            tried.append(part[1:])
            yield do(part)
        raise BrokenProcessPool

    with pytest.raises(InputError, match="run the same command again"):
        survey(SMALL, stopped, over=killed)
    kept = tmp_path / "stopped.csv.part"
    kept.write_text(kept.read_text() + '["white ash", "Lis')  # cut off in the middle of a line
    with pytest.raises(InputError, match="another survey"):
        survey(replace(SMALL, samples=120), stopped)

    def the_rest(do, parts):
        tried.extend(part[1:] for part in parts)
        return map(do, parts)

    survey(SMALL, stopped, over=the_rest)
    assert stopped.read_bytes() == whole.read_bytes() and not kept.exists()
    assert sorted(tried) == sorted(part[1:] for part in SMALL.parts)
    with pytest.raises(InputError, match="exists already"):
        survey(SMALL, stopped)


def test_workers_and_clusters_give_the_same_table(tmp_path, rows):
    def cluster(do, parts):
        return dask.compute(*(dask.delayed(do)(part) for part in parts), scheduler="threads")

    assert survey(SMALL, tmp_path / "cluster.csv", over=cluster) == rows
    with workers(2) as over:
        assert survey(SMALL, tmp_path / "workers.csv", over=over) == rows


def test_memory_is_bounded():
    most = settings_of(["white oak"], ["Chicago"], ["4 in"], samples=MOST_BOARDS)
    tracemalloc.start()
    try:
        rows_of(most.parts[0])
        assert tracemalloc.get_traced_memory()[1] < 250e6
    finally:
        tracemalloc.stop()


@pytest.mark.parametrize("width", ["3 in", "40 in"])
def test_every_way_can_be_surveyed(width):
    settings = settings_of(["white oak"], ["Chicago"], [width], [way.key for way in every_way()], samples=20)
    assert len(rows_of(settings.parts[0])) == len(every_way())


def test_everything_wrong_is_told_at_once(tmp_path, monkeypatch):
    with pytest.raises(InputError) as caught:
        settings_of(["wite oak"], ["Chikago"], ["-3 in"], ["glue"], cut="slab", samples=3)
    for part in ("wite oak", "Chikago", "-3 in", "glue", "slab", "boards is 3"):
        assert part in str(caught.value)
    monkeypatch.setitem(__import__("sys").modules, "pyarrow", None)
    with pytest.raises(InputError, match="write a .csv"):
        survey(SMALL, tmp_path / "s.parquet")
    assert not list(tmp_path.iterdir())


def test_table_and_map(tmp_path, rows):
    told = write_survey(
        tmp_path / "s.csv",
        "24 in",
        woods=["pine, eastern white", "white ash"],
        places=["Chicago"],
        widths=["24 in"],
        samples=50,
    )
    with (tmp_path / "s.csv").open(newline="") as file:
        assert len(list(csv.DictReader(file))) == 12
    assert "24 in (610 mm)" in (tmp_path / "s.svg").read_text() and "Border glued across the ends" in told[1]
    picture, words = map_of(rows, 0.6)
    assert "stops being sensible" in picture.title and "sensible in 4 of 4 cells" in words
    assert json.dumps(rows)  # a part can travel as text
