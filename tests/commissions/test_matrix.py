"""Commissions nobody tuned for come through: every way is judged, set out and drawn, and its drawings can be read."""

from __future__ import annotations

from commissions.sheets import faults

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.setting_out.plan import set_out
from woodlib.setting_out.sheets import sheets
from woodlib.ways.drawing import draw_verdict


def test_every_way_is_judged_set_out_and_drawn(matrix_brief):
    commission = commission_of(read_brief(matrix_brief))
    for number, verdict in enumerate(commission.verdicts):
        plan = set_out(commission.brief, verdict=verdict)
        assert plan.made.parts and all(size.exact_m > 0 for part in plan.made.parts for size in part.sizes)
        drawn = draw_verdict(verdict, commission.piece)
        assert not faults(drawn), f"{verdict.key}: {faults(drawn)}"
        for sheet in sheets(plan, ("A4", "Letter")[number % 2]).values():  # each paper with half of the ways
            assert not faults(sheet), f"{verdict.key}: {sheet.title}: {faults(sheet)}"
