"""No label is a key: with every label of every way turned into nonsense, every number stays what it was."""

from __future__ import annotations

from contextlib import contextmanager
from dataclasses import replace
from itertools import count

from woodlib.brief import read_brief
from woodlib.commission.judged import commission_of
from woodlib.data_files import data_path
from woodlib.handout.record import record
from woodlib.setting_out.plan import set_out
from woodlib.ways.index import verdict_for
from woodlib.ways.piece import Piece
from woodlib.ways.registry import every_way, register, unregister

SEAT = data_path("briefs/reading_nook_seat.toml")
PIECE = Piece("white oak", "6 in", "20 in", "3/4 in", "3/4 in")
MONTHS = [6, 6, 7, 8, 9, 10, 11, 11, 10, 8, 7, 6]
SIZES = ("cuts", "states")


def numbers():
    """Every size of every way by key; sizes of every part set out; every leaf of both studies of a piece."""
    cuts = {}
    for way in every_way():
        verdict = verdict_for(way.key, PIECE, 8, MONTHS)
        sizes = (*verdict.cuts, *verdict.states)
        cuts[way.key] = {cut.key: (cut.metres, cut.rounding, cut.written_m(), cut.written_m("metric")) for cut in sizes}
    commission = commission_of(read_brief(SEAT))
    parts, leaves = {}, {}
    for verdict in commission.verdicts:
        plan = set_out(commission.brief, verdict=verdict)
        parts[verdict.key] = [size.exact_m for part in plan.made.parts for size in part.sizes], plan.order.names
    for way in commission.drawn_ways:
        leaves[way] = record(commission.study().answer(way=way)).leaves.tolist()
    leaves["compared"] = record(commission.compared().answer()).leaves.tolist()
    return cuts, parts, leaves


def scrambled(rule, number):
    return replace(rule, label=f"zz{next(number)}")


@contextmanager
def nonsense():
    ways, number = every_way(), count()
    for way in ways:
        unregister(way.key)
        register(
            replace(way, **{name: tuple(scrambled(rule, number) for rule in getattr(way, name)) for name in SIZES})
        )
    yield
    for way in ways:
        unregister(way.key)
        register(way)


def test_labels_decide_nothing():
    before = numbers()
    with nonsense():
        assert all(rule.label.startswith("zz") for way in every_way() for rule in (*way.cuts, *way.states))
        assert numbers() == before
    assert numbers() == before


def test_every_size_has_a_key_of_its_own():
    for way in every_way():
        keys = [rule.key for name in SIZES for rule in getattr(way, name)]
        assert len(set(keys)) == len(keys) and all(key.isidentifier() for key in keys), way.key
