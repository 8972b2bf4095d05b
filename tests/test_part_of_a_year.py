"""A log of part of a year: what it cannot know is said first, and no glued border is advised on it."""

from __future__ import annotations

import pytest

from woodlib.air import hygrometer_log
from woodlib.brief import read_brief
from woodlib.commission.in_four_lines import four_lines
from woodlib.commission.in_short import opening
from woodlib.commission.judged import commission_of
from woodlib.commission.verdicts import verdict_lines
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.handout.replay import freeze_checked
from woodlib.studies.ways_to_build import ways_to_build
from woodlib.words.say import plain_text

SEAT = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")


def seat_in(folder, months, more="", moisture="10 %"):
    rows = [f"2025-{month:02d}-{day:02d} 12:00,22.0,{54 + day % 5}.0" for month in months for day in range(1, 29)]
    (folder / "log.csv").write_text("\n".join(["time,temperature (degC),humidity (%)", *rows]), encoding="utf-8")
    start, end = SEAT.index("[house.seasons.winter]"), SEAT.index("[[hardware]]")
    text = f'{SEAT[:start]}[house]\nlog = "log.csv"\n{more}\n{SEAT[end:]}'.replace('"8 %"', f'"{moisture}"')
    path = folder / "seat.toml"
    path.write_text(text, encoding="utf-8")
    return commission_of(read_brief(path))


@pytest.mark.parametrize("months", [range(5, 10), range(6, 9), range(1, 4), (1, 7)])
@pytest.mark.parametrize("moisture", ["10 %", "9.5 %"])
def test_no_glued_border_is_advised_on_part_of_a_year(tmp_path, months, moisture):
    """Even air and stock at rest in it make a glued border look safe; the months that split it may be the missing ones."""
    made = seat_in(tmp_path, months, moisture=moisture)
    assert not made.advised.way.holds and made.advised.allowed
    held = [verdict for verdict in made.verdicts if verdict.way.holds]
    assert held and not any(verdict.allowed for verdict in held)
    free = [verdict.risk for verdict in made.verdicts if not verdict.way.holds]
    assert set(free) == {"safe in the months that were measured"}  # its slots are cut for those alone
    lines = list(verdict_lines(made))
    assert "is not known" in lines[1]
    assert "decide" in made.would_change or "would tell" in made.would_change
    told = str(four_lines(made))
    assert "in the months that were measured" in told and "split in the first years" not in told


def test_sliders_never_call_a_glued_border_safe_on_part_of_a_year(tmp_path):
    """At every corner of the sliders: not fine, and the sentence says which months are missing where they decide."""
    made = seat_in(tmp_path, range(5, 10))
    key, unknown = made.glued.key, 0
    study = ways_to_build("seat", made.sliding.with_ways((key,)), key)
    for corner in study.corners():
        answer = study.answer(**corner)
        assert answer.readings[1].tone.chosen != "fine"
        said = plain_text(answer.headline)
        unknown += "cannot be said yet" in said and "October to April is not known" in said
    assert unknown
    rows = {reading.label: plain_text(reading.words) for reading in made.compared().answer().readings[1:]}
    assert rows[made.glued.way.title] == "not known: months are missing"
    assert freeze_checked(study).worst_px < 0.5


def test_one_month_alone_is_refused_and_filled_where_it_can_be(tmp_path):
    with pytest.raises(InputError, match="readings of February only.*write climate or weather beside it"):
        seat_in(tmp_path, (2,))
    assert not seat_in(tmp_path, (2,), 'climate = "Chicago"').year.partial


def test_the_page_speaks_of_the_measured_months_only(tmp_path):
    made = seat_in(tmp_path, range(5, 10))
    told = f"{opening(made)} {four_lines(made)}"
    assert "in the months that were measured, air near" in told
    assert "cannot be said before the missing months are known" in told and "in the first years" not in told


def test_a_whole_year_of_the_same_even_air_may_be_glued(tmp_path):
    made = seat_in(tmp_path, range(1, 13))
    assert made.glued.allowed and made.advised is made.glued


def test_a_log_is_read_once_for_a_whole_commission(tmp_path, monkeypatch):
    """A log of a million rows takes two seconds; verdicts, page and sheets asked for it six times."""
    read, asked = hygrometer_log.read_hygrometer_log, []
    monkeypatch.setattr(hygrometer_log, "read_hygrometer_log", lambda *a, **k: asked.append(a) or read(*a, **k))
    made = seat_in(tmp_path, (1, 7))
    opening(made)
    assert made.brief.year() is made.year and len(asked) == 1
