"""A brief is read whole, with the line of every key, and never written to."""

import json
import math
import shutil
import tempfile
import tomllib
from datetime import datetime, timedelta
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.brief import KEYS, key_lines, read_brief, template_text, write_template
from woodlib.brief.keys import KINDS_OF_PIECE
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.units import metres
from woodlib.ways.registry import kinds

DEMOS = ["reading_nook_seat.toml", "serving_board.toml"]


def demo(name: str) -> Path:
    return data_path(f"briefs/{name}")


def every_path(value, path=()):
    """Paths of all tables, keys and array elements of a parsed document."""
    if path:
        yield path
    inside = value.items() if isinstance(value, dict) else enumerate(value if isinstance(value, list) else ())
    for name, entry in inside:
        yield from every_path(entry, (*path, name))


AWKWARD = '''\
# a comment with [a.header] and key = 1
title = "a # in text" # and a comment
notes = """
[not.a.header]
width = "not a key" \\"""
quotes at the end"""""
\tplain."dotted.name".'more' = 1
"caf\\u00e9" = 2

[a.b.c]   # nested
x = 1
[a]
y = { z = 1, "w.w" = [ 1,
  2, { deep = 'it''s' } ] }
[[parts]]
name = 'one'
[[parts.holes]]
at = 1
[[parts.holes]]
at = 2
[parts.screw]
size = 3
[[parts]]
name = "two"
[[parts.holes]]
at = 4
[last]
list = [
  # comment, with ] and "
  "one",
  "two # not a comment",
]
raw = \'\'\'
] = [ \'\'\'
when = 1979-05-27 07:32:00Z
'''.replace("'it''s'", "'it'")


def test_lines_of_an_awkward_text():
    lines = key_lines(AWKWARD)
    assert set(lines) == set(every_path(tomllib.loads(AWKWARD)))
    expected = {
        ("title",): 2,
        ("notes",): 3,
        ("plain",): 7,
        ("plain", "dotted.name", "more"): 7,
        ("caf\u00e9",): 8,
        ("a",): 10,
        ("a", "b", "c", "x"): 11,
        ("a", "y", "z"): 13,
        ("a", "y", "w.w", 1): 14,
        ("a", "y", "w.w", 2, "deep"): 14,
        ("parts", 0): 15,
        ("parts", 0, "holes", 1, "at"): 20,
        ("parts", 0, "screw", "size"): 22,
        ("parts", 1, "name"): 24,
        ("parts", 1, "holes", 0, "at"): 26,
        ("last", "list", 1): 31,
        ("last", "when"): 35,
    }
    assert {path: lines[path] for path in expected} == expected


names = st.text("abcXYZ_-09.\"'#[]= \u00e9", min_size=1, max_size=6)
texts = st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=12)
leaves = st.one_of(st.integers(), st.booleans(), st.floats(allow_nan=False), texts)
tables = st.dictionaries(names, leaves, min_size=1, max_size=3)
documents = st.dictionaries(names, st.one_of(leaves, st.lists(leaves, max_size=3), tables), max_size=5)


def written(document: dict) -> tuple[str, dict]:
    """The document as TOML, with the line on which each key was written."""
    text, lines = ["# start"], {}

    def put(path, value):
        lines[path] = len(text) + 1
        key = json.dumps(path[-1], ensure_ascii=False)
        if isinstance(value, list):
            text.append(f"{key} = [ # ] a comment")
            for place, entry in enumerate(value):
                lines[(*path, place)] = len(text) + 1
                text.append(f'  {toml(entry)}, # "')
            text.append("]")
        else:
            text.append(f"{key}={toml(value)} # '''")

    for name, value in document.items():
        if not isinstance(value, dict):
            put((name,), value)
    for name, value in document.items():
        if isinstance(value, dict):
            lines[(name,)] = len(text) + 1
            text.append(f" [ {json.dumps(name, ensure_ascii=False)} ] # table")
            for inner, entry in value.items():
                put((name, inner), entry)
    return "\n".join(text), lines


def toml(value) -> str:
    if isinstance(value, float):
        return repr(value)
    return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")


@given(documents)
def test_every_key_is_found_on_the_line_it_was_written(document):
    text, lines = written(document)
    assert tomllib.loads(text) == document
    assert key_lines(text) == lines


def test_the_line_scanner_agrees_with_the_demonstrations():
    for name in DEMOS:
        text = demo(name).read_text(encoding="utf-8")
        lines = key_lines(text)
        assert set(lines) == set(every_path(tomllib.loads(text)))
        for path, line in lines.items():
            if isinstance(path[-1], str):
                assert path[-1] in text.split("\n")[line - 1]


def test_the_seat_is_read_in_si_with_its_text_kept():
    brief = read_brief(demo("reading_nook_seat.toml"))
    assert brief.piece.width_m == metres("20 in", name="width")
    assert brief.typed["piece.width"] == "20 in"
    assert brief.exact_m("piece.thickness") == Fraction(7, 8) * Fraction(254, 10_000)
    assert (brief.piece.kind, brief.piece.ring_angle_deg, brief.stock.month) == ("seat", 0.0, 10)
    assert brief.stock.moisture_percent() == 8.0
    assert [entry.centres_m for entry in brief.hardware] == [0.128, 0.128]
    assert brief.where("hardware.2.centres").startswith("reading_nook_seat.toml, line ")
    assert brief.constructions == () and brief.first == "customary"
    assert "oak" in brief.species().name


def test_the_seat_lives_in_dry_winters_and_damp_summers():
    year = read_brief(demo("reading_nook_seat.toml")).year()
    assert year.driest().name == "January" and year.dampest().name == "July"
    assert year.driest().rh_percent == pytest.approx(25.0, abs=0.01)
    assert year.dampest().rh_percent == pytest.approx(62.0, abs=0.01)


def test_the_board_rests_in_the_air_of_the_shop_and_goes_to_the_sea():
    brief = read_brief(demo("serving_board.toml"))
    assert brief.species().name == "black cherry"
    # At 50 % RH the Wood Handbook (FPL-GTR-190, Table 4-2) has 9.4 % at 15.6 degC and 9.2 % at 21.1 degC.
    assert 9.2 <= brief.stock.moisture_percent() <= 9.4
    assert brief.year().dampest().emc_percent > brief.year().driest().emc_percent
    assert brief.first == "metric"


@pytest.mark.parametrize("name", DEMOS)
def test_demonstrations_say_that_they_are_invented(name):
    text = demo(name).read_text(encoding="utf-8")
    assert text.startswith("# INVENTED")
    assert "nvented" in read_brief(demo(name)).notes


def test_reading_leaves_the_folder_as_it_was(tmp_path):
    shutil.copy(demo("reading_nook_seat.toml"), tmp_path / "seat.toml")
    before = (tmp_path / "seat.toml").read_bytes()
    (tmp_path / "seat.toml").chmod(0o444)
    brief = read_brief(tmp_path / "seat.toml")
    brief.year(), brief.species()
    assert [path.name for path in tmp_path.iterdir()] == ["seat.toml"]
    assert (tmp_path / "seat.toml").read_bytes() == before
    with pytest.raises(AttributeError):
        brief.title = "another"
    with pytest.raises(TypeError):
        brief.typed["title"] = "another"


def test_a_new_brief_reads_at_once_and_is_never_overwritten(tmp_path):
    path = write_template(tmp_path / "bench.toml")
    assert read_brief(path).title == "Reading-nook seat"
    path.write_text("mine", encoding="utf-8")
    with pytest.raises(InputError, match="exists already and is left as it is"):
        write_template(path)
    assert path.read_text(encoding="utf-8") == "mine"


def test_the_template_explains_every_key():
    text = template_text()
    for key in KEYS:
        if key.says:
            assert f"{key.name} = " in text
            assert " ".join(key.says.split()[:6]) in text


def uncommented(text: str, *names: str) -> str:
    """The template with some of its commented keys and headings switched on."""
    for name in names:
        text = text.replace(f"\n# {name}", f"\n{name}")
    return text


def without_seasons(text: str) -> str:
    start, end = text.index("[house.seasons.winter]"), text.index("# Other ways to give the air")
    return text[:start] + text[end:]


def test_every_kind_of_piece_that_a_way_serves_can_be_asked_for():
    assert set(KINDS_OF_PIECE) == set(kinds())


def test_boards_and_places_of_hardware_are_read_exactly_and_may_be_left_out():
    seat, board = (read_brief(demo(name)) for name in DEMOS)
    assert [(entry.name, entry.count) for entry in seat.boards] == [("A", 3), ("B", 1)] and board.boards == ()
    assert seat.boards[0].width_m == pytest.approx(0.15875) and seat.exact_m("boards.2.length") == Fraction(
        12192, 10_000
    )
    assert seat.hardware[0].inset_m == pytest.approx(0.01905) and seat.hardware[0].middle_m is None
    assert seat.stock.out_of_flat_m == 0.0


def test_the_examples_of_the_template_that_are_left_out_are_good(tmp_path):
    """Boards, and the places of hardware, as the template shows them commented out."""
    text = template_text()
    for key in KEYS:
        if key.table in ("boards[]", "hardware[]") or key.path == "wood.out_of_flat":
            text = text.replace(f"# {key.name} = {key.example}", f"{key.name} = {key.example}")
    path = tmp_path / "all.toml"
    path.write_text(text.replace("# [[boards]]", "[[boards]]"), encoding="utf-8")
    brief = read_brief(path)
    assert brief.boards[0].count == 2 and brief.hardware[0].screw_m == pytest.approx(0.004)
    assert brief.stock.out_of_flat_m == pytest.approx(0.0254 / 16)


def test_the_template_offers_a_climate_instead_of_seasons(tmp_path):
    names = ("[house]", "climate =", "heating =", "moisture_gain =", "dehumidifier_holds =")
    (tmp_path / "b.toml").write_text(uncommented(without_seasons(template_text()), *names), encoding="utf-8")
    brief = read_brief(tmp_path / "b.toml")
    assert (brief.house.source, brief.house.cooling_set_point_c) == ("climate", None)
    assert brief.house.heating_set_point_c == 20.0
    assert float(brief.year().rh_percent.max()) <= 55.0 + 1e-9


def test_a_log_is_found_beside_the_brief(tmp_path):
    rows = ["time;temperature [\u00b0C];humidity [%]"]
    for month in range(1, 13):
        rows += [f"{day:02d}.{month:02d}.2023 12:00;20,5;{30 + 4 * min(month, 13 - month)}" for day in range(1, 29)]
    (tmp_path / "logs").mkdir()
    (tmp_path / "logs" / "room.csv").write_text("\n".join(rows), encoding="utf-8")
    text = uncommented(without_seasons(template_text()), "[house]", "log =", "log_date_order =")
    (tmp_path / "b.toml").write_text(text.replace("room_log.csv", "logs/room.csv"), encoding="utf-8")
    brief = read_brief(tmp_path / "b.toml")
    assert brief.house.log_path == tmp_path / "logs" / "room.csv"
    assert brief.year().driest().rh_percent == pytest.approx(34, abs=0.5)


def test_a_log_of_several_sensors_is_read_for_the_one_that_is_named(tmp_path):
    rows = ["when;T shelf;RH shelf;T out;RH out"]
    rows += [f"2023-{month:02d}-{day:02d} 12:00;20;{30 + month};5;90" for month in range(1, 13) for day in range(1, 29)]
    (tmp_path / "room_log.csv").write_text("\n".join(rows), encoding="utf-8")
    said = '[house]\nlog = "room_log.csv"\nlog_sensor = "out"\nlog_time_column = "when"\nlog_humidity_column = "RH shelf"\n'
    (tmp_path / "b.toml").write_text(without_seasons(template_text()) + said, encoding="utf-8")
    year = read_brief(tmp_path / "b.toml").year()
    assert set(year.temperature_c) == {5.0} and year.dampest().rh_percent == pytest.approx(42.0)


def invented_weather() -> str:
    """A year in the open EPW layout: a cold winter, a mild summer, always damp outdoors."""
    start = datetime(2023, 1, 1)
    rows = ["LOCATION,Invented Harbour,-,NOWHERE,made up,0,45.0,5.0,1.0,20.0", *(f"HEADER {n}," for n in range(2, 9))]
    for when in (start + timedelta(hours=hour) for hour in range(8760)):
        dry_bulb = 8 - 12 * math.cos(2 * math.pi * (when - start).days / 365)
        clock = f"2023,{when.month},{when.day},{when.hour + 1},60"
        rows.append(f"{clock},?,{dry_bulb:.1f},{dry_bulb - 4:.1f},76,101325,0,0")
    return "\n".join(rows)


def test_a_weather_file_beside_the_brief_is_brought_indoors(tmp_path):
    (tmp_path / "near_by.epw").write_text(invented_weather(), encoding="utf-8")
    text = uncommented(without_seasons(template_text()), "[house]", "weather =", "heating =", "moisture_gain =")
    (tmp_path / "b.toml").write_text(text, encoding="utf-8")
    year = read_brief(tmp_path / "b.toml").year()
    assert float(year.temperature_c.min()) == pytest.approx(20.0, abs=0.01)
    assert year.driest().rh_percent < 45 < year.dampest().rh_percent
    assert year.driest().name in ("December", "January", "February")


def test_a_kind_of_house_is_enough_beside_a_climate_and_every_constant_can_be_said(tmp_path):
    said = '[house]\nclimate = "Chicago"\n'
    more = 'kind = "old and draughty"\nwarmer_in_summer = "9 degF"\nmoisture_gain = "4 g/m3"\nsummer_moisture_gain = "1 g/m3"\n'
    rooms = []
    for extra in ("", more):
        (tmp_path / "b.toml").write_text(without_seasons(template_text()) + said + extra, encoding="utf-8")
        rooms.append(read_brief(tmp_path / "b.toml").house.room())
    assert [rooms[0].name, rooms[1].name] == ["lived in, windows open in summer", "old and draughty"]
    assert (rooms[1].warmer_k, rooms[1].winter_gain_g_m3, rooms[1].summer_gain_g_m3) == (5.0, 4.0, 1.0)


def test_a_climate_beside_a_log_fills_the_months_that_it_lacks(tmp_path):
    rows = ["time;temp C;rh"]
    rows += [f"2023-{month:02d}-{day:02d} 12:00;24;58" for month in range(5, 10) for day in range(1, 29)]
    (tmp_path / "room_log.csv").write_text("\n".join(rows), encoding="utf-8")
    said = '[house]\nlog = "room_log.csv"\nclimate = "Chicago"\n'
    (tmp_path / "b.toml").write_text(without_seasons(template_text()) + said, encoding="utf-8")
    year = read_brief(tmp_path / "b.toml").year()
    assert not year.partial and year.rh_percent[4:9] == pytest.approx(58.0)
    assert year.driest().name in ("January", "February") and 4.0 < year.driest().emc_percent < 8.0
    assert any("January, February, March, April, October" in remark for remark in year.remarks)


def test_a_wood_of_the_makers_own_is_found_first(tmp_path):
    (tmp_path / "my_woods.csv").write_text(
        "name,radial_shrinkage_percent,tangential_shrinkage_percent\nhedge wood,4.5,8.5\n", encoding="utf-8"
    )
    text = uncommented(template_text(), "own_species =").replace('"white oak"', '"hedge wood"')
    (tmp_path / "b.toml").write_text(text, encoding="utf-8")
    species = read_brief(tmp_path / "b.toml").species()
    assert species.require("tangential_shrinkage_percent").number == 8.5


def test_every_spelling_of_a_table_is_accepted(tmp_path):
    (tmp_path / "b.toml").write_text(
        """
title = 'Board'
piece = { kind = "Board", width = '9"', length = "18 in", thickness = "3/4 in", rings = 60 }
wood.species = "black cherry"
wood.moisture = 9
wood.built_in = "Sept"
house.hemisphere = "south"
house.seasons.winter = { temperature = "15 degC", humidity = 70 }
house.seasons.summer = { temperature = "24 degC", humidity = 55 }
handout.gap.width = "20 in"
handout.gap.glued = true
""",
        encoding="utf-8-sig",
        newline="\r\n",
    )
    brief = read_brief(str(tmp_path / "b.toml"))
    assert brief.piece.ring_angle_deg == 60 and brief.piece.border_width_m is None
    assert brief.stock.month == 9 and brief.stock.meter_error_percent == 1.0
    assert brief.handout["gap"] == {"width": "20 in", "glued": True}
    assert brief.where("handout.gap.width") == "b.toml, line 10: "
    assert brief.year().dampest().name == "July"


def test_text_with_markup_is_kept_as_text(tmp_path):
    hostile = "<script>alert('x')</script> {{ 7*7 }} $(rm -rf) %s"
    text = template_text().replace('"Name of the client"', json.dumps(hostile))
    (tmp_path / "b.toml").write_text(text, encoding="utf-8")
    assert read_brief(tmp_path / "b.toml").client == hostile


@given(st.binary(max_size=300))
def test_any_file_is_a_brief_or_sentences(content):
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "b.toml"
        path.write_bytes(content)
        with pytest.raises(InputError) as caught:
            read_brief(path)
        assert all(len(sentence.splitlines()) == 1 for sentence in caught.value.problems)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (('temperature = "70 degF"', 'temperature = "21 degF"'), "which rooms that are lived in do not keep"),
        (('humidity = "25 %"', 'humidity = "100 %"'), "which rooms that are lived in do not keep"),
        (('humidity = "60 %"', 'humidity = "1 %"'), "which rooms that are lived in do not keep"),
        (('moisture = "8 %"', 'moisture = "28 %"'), "green or wet"),
        (('moisture = "8 %"', 'moisture = "4 %"'), "drier than a heated room"),
        (('meter_error = "1 %"', 'meter_error = "10 %"'), "settles nothing"),
    ],
)
def test_slips_are_taken_and_asked_about(tmp_path, change, says):
    path = tmp_path / "b.toml"
    assert change[0] in template_text()
    path.write_text(template_text().replace(*change), encoding="utf-8")
    assert any(says in remark and "b.toml, line" in remark for remark in read_brief(path).remarks)


def test_a_steady_house_has_no_damp_winter(tmp_path):
    text = template_text().replace('humidity = "25 %"', 'humidity = "60 %"').replace('"75 degF"', '"70 degF"')
    (tmp_path / "b.toml").write_text(text, encoding="utf-8")
    assert not any("damper" in remark for remark in read_brief(tmp_path / "b.toml").remarks)
