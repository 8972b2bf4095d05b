"""A door with a thin panel, which no tongue can be cut on: from the brief to what its client reads."""

import pytest
from commissions.matrix import brief_text

from woodlib.brief import read_brief
from woodlib.commission import commission_of, setting_out_of
from woodlib.commission.in_four_lines import you_will_see
from woodlib.words.say import plain_text


@pytest.mark.parametrize("profile", ["flush", "raised"])
def test_the_profile_that_is_asked_for_is_built(tmp_path, profile):
    path = tmp_path / "door.toml"
    asked = brief_text("door panel", 1, "inches", "dry winters", "white ash")
    path.write_text(asked.replace("[wood]", f'panel = "{profile}"\n[wood]'), encoding="utf-8")
    door = commission_of(read_brief(path))
    assert {verdict.way.profile for verdict in door.verdicts} == {profile}
    assert door.built.key == {"flush": "frame_panel", "raised": "raised_panel"}[profile] and door.built.allowed


def test_a_thin_panel_is_built_flat_in_its_groove_and_its_client_hears_of_the_panel(tmp_path):
    path = tmp_path / "door.toml"
    thick = brief_text("door panel", 1, "inches", "dry winters", "white ash")
    path.write_text(thick.replace('\nthickness = "7/8 in"', '\nthickness = "1/4 in"', 1), encoding="utf-8")
    door = commission_of(read_brief(path))
    assert door.built.key == "flat_panel" and door.built.allowed
    assert "the panel in its frame is about" in plain_text(you_will_see(door))
    panel, stile, rail = setting_out_of(door).piece.parts
    assert (panel.note, stile.count, rail.count) == ("", 2, 2)
