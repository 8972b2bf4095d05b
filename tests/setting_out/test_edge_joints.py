"""What lines up the boards of a panel where they are glued edge to edge."""

from __future__ import annotations

import pytest

from woodlib.brief import read_brief
from woodlib.commission import commission_of
from woodlib.commission.shop import setting_out_of, shop_cards
from woodlib.data_files import data_path


def commission(tmp_path, *changes):
    text = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
    for before, after in changes:
        assert before in text
        text = text.replace(before, after, 1)
    path = tmp_path / "panel.toml"
    path.write_text(text, encoding="utf-8")
    return commission_of(read_brief(path), "battens")


@pytest.mark.parametrize(
    ("thickness", "joints", "dowels"),
    [
        ("7/8 in", "", True),
        ("7/8 in", 'edge_joints = "dowels"', True),
        ("7/8 in", 'edge_joints = "none"', False),
        ("1/2 in", "", True),  # 1/4 in dowels, half of the thickness
        ("3/8 in", "", False),  # no 1 in dowel in a 3/8 in bottom
        ("3/8 in", 'edge_joints = "dowels"', False),
    ],
)
def test_dowels_are_a_choice_and_thin_panels_take_none(tmp_path, thickness, joints, dowels):
    found = commission(tmp_path, ('\nthickness = "7/8 in"', f'\n{joints}\nthickness = "{thickness}"'))
    plan = setting_out_of(found)
    assert len(plan.boards.strips) > 1 and plan.glue.lines == len(plan.boards.strips) - 1
    assert bool(plan.joints) == dowels
    assert any("dowel" in name for name in plan.order.names) == dowels
    text = shop_cards(found).text
    assert ("Glue line" in text) == dowels
    assert ("glued plain, without dowels: it is thinner than 1/2 in (12.5 mm)" in text) == (thickness == "3/8 in")
    assert all(joint.joint.size_m <= plan.glued_blank.finished_thickness_m / 2 for joint in plan.joints)
