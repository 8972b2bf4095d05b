"""Every mistake in a brief is named with its line and a way out, and all of them at once."""

import pytest

from woodlib.brief import read_brief, write_template
from woodlib.commission import checked_brief, commission_of
from woodlib.errors import InputError, WoodlibError

GOOD = """\
title = "Seat"
[piece]
kind = "seat"
width = "20 in"
length = "44 in"
thickness = "7/8 in"
border_width = "2 in"
border_thickness = "7/8 in"
rings = "flatsawn"
[wood]
species = "white oak"
moisture = "8 %"
built_in = "October"
[house.seasons.winter]
temperature = "70 degF"
humidity = "25 %"
[house.seasons.summer]
temperature = "75 degF"
humidity = "60 %"
[[hardware]]
name = "pull"
centres = "128 mm"
runs = "across the grain"
[[hardware]]
name = "second pull"
centres = "96 mm"
runs = "along the grain"
"""

OUTDOORS = '[house]\nclimate = "Aberdeen"\nheating = "10 degC"\nmoisture_gain = "20 g/m3"\n'
SEASONS = GOOD[GOOD.index("[house.seasons.winter]") : GOOD.index("[[hardware]]")]
HARDWARE = GOOD[GOOD.index("[[hardware]]") :]

# what is replaced, by what, the line it is on (None: a table that is not there), fragment of the sentence
MISTAKES = [
    ('title = "Seat"', "", None, 'title is missing; write title = "Reading-nook seat"'),
    ('title = "Seat"', "title = 7", 1, "title is 7, not text; put it in quotation marks"),
    ('title = "Seat"', 'title = " "', 1, "title is empty"),
    ('title = "Seat"', 'title = "a\\nb"', 1, "title has several lines"),
    ('title = "Seat"', 'title = "a\\u0007b"', 1, "a control character"),
    ('title = "Seat"', 'title = "a\\u202Eb"', 1, "a control character"),
    ('title = "Seat"', f'title = "{"x" * 300}"', 1, "title has 300 characters; at most 200"),
    ('title = "Seat"', 'title = "Seat"\nunits = "inch"', 2, "did you mean inches?"),
    ('title = "Seat"', 'title = "Seat"\nclinet = "me"', 2, "'clinet' is not a key of a brief; did you mean client?"),
    ('title = "Seat"', 'title = "Seat"\n"<b>" = 1', 2, "'<b>' is not a key of a brief; known here are title, maker"),
    ('title = "Seat"', 'title = "Seat"\nfinish = 3', 2, "finish is 3; it must be a table headed [finish]"),
    ('title = "Seat"', 'title = "Seat"\nconstructions = "all"', 2, "write a list of up to 50 names"),
    ('title = "Seat"', 'title = "Seat"\nconstructions = ["a", "a"]', 2, "holds 'a' twice"),
    ('title = "Seat"', 'title = "Seat"\nconstructions = [1]', 2, "constructions is 1, not text"),
    ('title = "Seat"', 'title = "Seat"\nhandout = 3', 2, "it must be a table headed [handout]"),
    ('title = "Seat"', 'title = "Seat"\nhandout.gap = 3', 2, "it must be a table headed [handout.gap]"),
    ('title = "Seat"', 'title = "Seat"\nhandout.gap.width = nan', 2, "handout.gap.width is nan; write one value"),
    ('title = "Seat"', 'title = "Seat"\nhandout.gap.width = [1]', 2, "handout.gap.width is [1]; write one value"),
    (
        'title = "Seat"',
        'title = "Seat"\nfinish.coats = 2.5',
        2,
        "finish.coats is 2.5; write a whole number from 0 to 30",
    ),
    ('title = "Seat"', 'title = "Seat"\nfinish.coats = true', 2, "finish.coats is True; write a whole number"),
    (
        'title = "Seat"',
        'title = "Seat"\nspecies = "oak"',
        2,
        "'species' is not a key of a brief; did you mean wood.species?",
    ),
    ('kind = "seat"', 'kind = "seet"', 3, "did you mean seat?"),
    ('kind = "seat"', "kind = 3", 3, "write one of lid, seat, table top, shelf, door panel, board"),
    (
        'kind = "seat"',
        'kind = "seat"\nwidht = "20 in"',
        4,
        "'piece.widht' is not a key of a brief; did you mean piece.width?",
    ),
    ('width = "20 in"', "", 2, "piece.width is missing; write width ="),
    ('width = "20 in"', "width = 20", 4, "piece.width is 20, a plain number without a unit"),
    ('width = "20 in"', 'width = "7/8"', 4, 'a fraction without a unit; write the unit, for example "7/8 in"'),
    ('width = "20 in"', 'width = " 20 7/8 "', 4, "a fraction without a unit"),
    ('width = "20 in"', 'width = "twenty"', 4, "piece.width is 'twenty', which is not a length"),
    ('width = "20 in"', 'width = "5 kg"', 4, "a mass and not a length"),
    ('width = "20 in"', "width = nan", 4, "piece.width is nan, not a finite number"),
    ('width = "20 in"', "width = 0x" + "f" * 6000, 4, "piece.width is a number of thousands of digits"),
    ('width = "20 in"', 'width = "1,500 mm"', 4, "can be read two ways"),
    ('width = "20 in"', 'width = "-20 in"', 4, "it must be at least"),
    ('width = "20 in"', 'width = "200 in"', 4, "it must be at most"),
    ('width = "20 in"', "width = 1979-05-27", 4, "which is not a length"),
    ('width = "20 in"', "width = true", 4, "piece.width is True"),
    ('width = "20 in"', "width.inches = 20", 4, "which is not a length"),
    ('width = "20 in"', 'width = "1 in"', 7, "piece.border_width is '2 in'; with piece.width '1 in' it must be less"),
    ('width = "20 in"', 'width = "1/2 in"', 6, "the thickness is the smallest size of a panel"),
    ('border_width = "2 in"\n', "", 7, "piece.border_thickness is given without piece.border_width"),
    ('border_thickness = "7/8 in"\n', "", 7, "piece.border_width is given without piece.border_thickness"),
    ('rings = "flatsawn"', 'rings = "flatsawed"', 9, "did you mean flatsawn?"),
    ('rings = "flatsawn"', 'rings = "100 deg"', 9, "between 0 and 90 degree"),
    ('species = "white oak"', 'species = "wite oak"', 11, "white oak"),
    ('species = "white oak"', 'species = "white oak"\nown_species = "none.csv"', 12, "no such file beside the brief"),
    (
        'species = "white oak"',
        'species = "white oak"\nown_species = "/dev/null"',
        12,
        "is '/dev/null', a device and not a file",
    ),
    ('moisture = "8 %"\n', "", 10, "the moisture of the stock is missing"),
    ('moisture = "8 %"', 'shop_humidity = "45 %"', 12, "the moisture of the stock is missing"),
    ('moisture = "8 %"', 'moisture = "8 %"\nshop_humidity = "45 %"', 13, "not both"),
    ('moisture = "8 %"', 'moisture = "200 %"', 12, "between 1 and 30 percent"),
    ('moisture = "8 %"', 'moisture = "31 %"', 12, "between 1 and 30 percent"),
    ('moisture = "8 %"', "moisture = 0.08", 12, 'if you mean 8 %, write "8 %"'),
    (
        'moisture = "8 %"',
        'moisture = "8 % RH"',
        12,
        "a relative humidity and not a moisture content; write it like 8 % MC",
    ),
    (
        'moisture = "8 %"',
        'moisture = "8 %"\nmeter_error = "1 % RH"',
        13,
        "a relative humidity and not a moisture content",
    ),
    ('moisture = "8 %"', 'shop_temperature = "65 degF"\nshop_humidity = "45% mc"', 13, "write it like 45 % RH"),
    ('moisture = "8 %"', 'moisture = "8 %"\nmeter_error = "-1 %"', 13, "between 0 and 10 percent"),
    ('built_in = "October"', "built_in = 10", 13, "write one of January"),
    ('built_in = "October"', 'built_in = "Octobre"', 13, "did you mean October?"),
    ('built_in = "October"', 'built_in = "Ju"', 13, "write one of January"),
    ("[house.seasons.winter]", "[house.seasons.wintr]", 14, "did you mean winter?"),
    ("[house.seasons.winter]", "[house.seasons.July]", 14, "July"),
    ('temperature = "70 degF"', "temperature = 70", 15, "house.seasons.winter.temperature is 70, a plain number"),
    ('temperature = "70 degF"', 'temperature = "700 degF"', 15, "between -40 and 45 degC"),
    ('temperature = "70 degF"', 'temperature = "50 degC"', 15, "between -40 and 45 degC"),
    (
        'humidity = "25 %"',
        'humidity = "25 % MC"',
        16,
        "a moisture content and not a relative humidity; write it like 45 % RH",
    ),
    ('humidity = "25 %"', "humidity = 0.25", 16, 'if you mean 25 %, write "25 %"'),
    ('humidity = "25 %"', "humidity = 0.25", 16, "between 1 and 100 percent"),
    ('humidity = "25 %"', 'humidity = "125 %"', 16, "between 1 and 100 percent"),
    ('humidity = "25 %"', 'humidty = "25 %"', 16, "'house.seasons.humidty' is not a key"),
    (SEASONS, "", None, "house has no air; give exactly one of seasons, log, weather and climate"),
    (SEASONS, '[house]\nseasons = "dry"\n', 15, "it must be a table headed [house.seasons]"),
    (SEASONS, "[house.seasons]\n", 14, "0 seasons were given"),
    (SEASONS, SEASONS[: SEASONS.index("[house.seasons.summer]")], 14, "1 season was given"),
    (
        SEASONS,
        '[house]\nclimate = "Xyzzy"\nheating = "20 degC"\nmoisture_gain = "2 g/m3"\n',
        15,
        "write one of Aberdeen, ",
    ),
    (SEASONS, SEASONS + '[house]\nclimate = "Chicago"\n', 21, "house has seasons and climate; give exactly one"),
    (
        SEASONS,
        SEASONS + '[house]\nheating = "68 degF"\n',
        21,
        "house.heating goes with weather or climate, not with seasons",
    ),
    (SEASONS, SEASONS + '[house]\nhemisphere = "west"\n', 21, "write one of north, south"),
    (SEASONS, "", None, 'for example house.seasons.winter = {temperature = "70 degF", humidity = "25 %"}'),
    (SEASONS, '[house]\nlog = "."\n', 15, "house.log is '.', a folder and not a file; give the path of a file"),
    (SEASONS, '[house]\nlog = "/dev/null"\n', 15, "house.log is '/dev/null', a device and not a file"),
    (
        SEASONS,
        OUTDOORS + 'humidifier_holds = "60 %"\ndehumidifier_holds = "40 %"\n',
        18,
        "house.humidifier_holds is '60 %', above house.dehumidifier_holds '40 %'",
    ),
    ('width = "20 in"', 'width = "5 m"', 4, "piece.width is '5 m'; it must be at most 180 in (4572 mm)"),
    (
        'title = "Seat"',
        'title = "Seat"\nlength = "44 in"',
        2,
        "'length' is not a key of a brief; did you mean piece.length?",
    ),
    (
        'title = "Seat"',
        'title = "Seat"\nwidth = "20 in"',
        2,
        "'width' is not a key of a brief; did you mean piece.width?",
    ),
    ('title = "Seat"', 'title = "Seat"\nthickness = "1 in"', 2, "did you mean piece.thickness?"),
    (SEASONS, '[house]\nlog = "missing.csv"\n', 15, "house.log is 'missing.csv', and there is no such file"),
    (SEASONS, '[house]\nlog = "../../../../etc/no such file"\n', 15, "there is no such file"),
    (SEASONS, '[house]\nweather = "missing.epw"\nheating = "20 degC"\nmoisture_gain = "2 g/m3"\n', 15, "no such file"),
    (
        SEASONS,
        '[house]\nclimate = "Chicgo"\nheating = "20 degC"\nmoisture_gain = "2 g/m3"\n',
        15,
        "did you mean Chicago",
    ),
    (SEASONS, '[house]\nclimate = "Chicago"\nkind = "igloo"\n', 16, "kind is 'igloo', which is no kind of house"),
    (SEASONS, '[house]\nclimate = "Chicago"\ncooling = "20 degC"\n', 16, "below the 22.3 degC that heating keeps"),
    (
        SEASONS,
        '[house]\nclimate = "Chicago"\nkind = "dehumidified"\nhumidifier_holds = "60 %"\n',
        16,
        "the humidifier holds 60 %, above the 53 % that the dehumidifier holds",
    ),
    (
        SEASONS,
        '[house]\nclimate = "Chicago"\nwarmer_in_summer = "70"\n',
        16,
        "house.warmer_in_summer is '70'; write by how much, 0 to 15 K",
    ),
    (SEASONS, SEASONS + '[house]\nkind = "tight"\n', 21, "house.kind goes with weather or climate"),
    (
        SEASONS,
        '[house]\nclimate = "Chicago"\nheating = "20 degC"\ncooling = "18 degC"\nmoisture_gain = "2 g/m3"\n',
        17,
        "house.cooling is '18 degC', below house.heating '20 degC'",
    ),
    (SEASONS, SEASONS + '[house]\nlog_date_order = "day first"\n', 21, "house.log_date_order goes with log"),
    (SEASONS, SEASONS + '[house]\nlog_sensor = "shelf"\n', 21, "house.log_sensor goes with log"),
    ('centres = "128 mm"', 'centres = "128"', 22, "hardware.centres is '128', a plain number"),
    (
        'centres = "96 mm"',
        'center = "96 mm"',
        26,
        "'hardware.center' is not a key of a brief; did you mean hardware.centres?",
    ),
    ('centres = "96 mm"\n', "", 24, "hardware.centres is missing"),
    ('centres = "128 mm"', 'centres = "600 mm"', 22, "does not fit on a panel with piece.width '20 in'"),
    ('runs = "along the grain"', 'runs = "alng the grain"', 27, "did you mean along the grain?"),
    (
        HARDWARE,
        "[hardware.pull]\ncentres = 1\n",
        20,
        "hardware is not a list of tables; head each one with [[hardware]]",
    ),
]

BROKEN = [
    ('width = "20 in"', "width = 20 in", 4, "write key = value with text in quotation marks"),
    ('width = "20 in"', 'width = "20""', 4, "width = '20\"'"),
    ('width = "20 in"', 'width = "20 in', 4, "(the quotation mark at its end is missing)"),
    ('width = "20 in"', 'width = "20 in"\nwidth = "21 in"', 5, "this key stands twice; keep one of the two"),
    ('width = "20 in"', "width =", 4, "(the value is missing, or is text without quotation marks)"),
    ('width = "20 in"', "width: 20", 4, "(there is no = between key and value)"),
    ("[wood]", "[wood", 10, "(the bracket at the end of the heading is missing)"),
    ("[wood]", "[piece]", 10, "this table stands twice; put its keys together under one heading"),
    ('title = "Seat"', 'title = "C:\\new"\nlog = "\\q"', 2, "(a backslash inside quotation marks"),
    ('title = "Seat"', 'title = "a\x00b"', 1, "(a character that cannot be seen)"),
    ('title = "Seat"', 'title = "Seat"\nconstructions = ["a"', 3, "(the bracket at its end is missing)"),
    ('title = "Seat"', 'title = "Seat" by me', 1, "(more follows where the line should end)"),
]


def brief_of(folder, text: str):
    path = folder / "seat.toml"
    path.write_text(text, encoding="utf-8")
    return read_brief(path)


def test_the_brief_without_mistakes_is_read(tmp_path):
    assert brief_of(tmp_path, GOOD).title == "Seat"


@pytest.mark.parametrize(("before", "after", "line", "fragment"), MISTAKES)
def test_one_mistake_gives_one_sentence_with_its_line(tmp_path, before, after, line, fragment):
    with pytest.raises(WoodlibError) as caught:
        brief_of(tmp_path, GOOD.replace(before, after, 1))
    place = f"seat.toml, line {line}: " if line else "seat.toml: "
    matching = [sentence for sentence in caught.value.problems if fragment in sentence]
    assert len(matching) == 1, caught.value.problems
    assert matching[0].startswith(place), matching[0]
    assert all(len(sentence.splitlines()) == 1 and len(sentence) < 500 for sentence in caught.value.problems)


@pytest.mark.parametrize(("before", "after", "line", "fragment"), BROKEN)
def test_a_broken_file_gives_one_sentence_with_the_line(tmp_path, before, after, line, fragment):
    with pytest.raises(InputError) as caught:
        brief_of(tmp_path, GOOD.replace(before, after, 1))
    (sentence,) = caught.value.problems
    assert sentence.startswith(f"seat.toml, line {line}: ") and fragment in sentence
    assert len(sentence.splitlines()) == 1 and "\\n" not in sentence and "('" not in sentence


def test_all_mistakes_come_at_once(tmp_path):
    text = (
        GOOD.replace('"20 in"', "20")
        .replace('"seat"', '"seet"')
        .replace('"October"', '"Okt"')
        .replace('"60 %"', '"160 %"')
    )
    with pytest.raises(InputError) as caught:
        brief_of(tmp_path, text + "colour = 1\n")
    lines = [int(sentence.split("line ")[1].split(":")[0]) for sentence in caught.value.problems]
    assert sorted(lines) == [3, 4, 13, 19, 28]


def test_a_bad_table_of_own_woods_is_reported_at_its_key(tmp_path):
    (tmp_path / "mine.csv").write_text("name,radial_shrinkage_percent\nhedge wood,a lot\n", encoding="utf-8")
    with pytest.raises(InputError) as caught:
        brief_of(tmp_path, GOOD.replace('moisture = "8 %"', 'moisture = "8 %"\nown_species = "mine.csv"'))
    (sentence,) = caught.value.problems
    assert sentence.startswith("seat.toml, line 13: ") and "a lot" in sentence


OWN_WOODS = [
    ("name,specific_gravity_12\nhedge wood,0.6\n", 'species = "hedge wood"', 11, "hedge wood"),
    ("species,tangential_shrinkage_percent\nhedge wood,9\n", 'species = "white oak"', 13, "did you mean 'name'?"),
    (
        "name,tangential_shrinkage_percent\nplum,9\nplum,8\n",
        'species = "plum"',
        13,
        "rows 2 and 3 are both named 'plum'",
    ),
]


@pytest.mark.parametrize(("woods", "species", "line", "fragment"), OWN_WOODS)
def test_a_wood_of_ones_own_that_cannot_be_used_is_reported_where_it_is_named(tmp_path, woods, species, line, fragment):
    (tmp_path / "mine.csv").write_text(woods, encoding="utf-8")
    text = GOOD.replace('moisture = "8 %"', 'moisture = "8 %"\nown_species = "mine.csv"')
    with pytest.raises(WoodlibError) as caught:
        brief_of(tmp_path, text.replace('species = "white oak"', species))
    (sentence,) = caught.value.problems
    assert sentence.startswith(f"seat.toml, line {line}: ") and fragment in sentence


FILES_OF_AIR = [
    ("log", "time,temp,humidity\n", 15, "has a heading and no readings"),
    ("weather", "nonsense\n", 15, "where an EPW file begins LOCATION"),
]


@pytest.mark.parametrize(("source", "content", "line", "fragment"), FILES_OF_AIR)
def test_a_file_of_air_that_cannot_be_used_is_reported_at_its_key(tmp_path, source, content, line, fragment):
    (tmp_path / "air.txt").write_text(content, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        brief_of(tmp_path, GOOD.replace(SEASONS, f'[house]\n{source} = "air.txt"\n'))
    (sentence,) = [sentence for sentence in caught.value.problems if fragment in sentence]
    assert sentence.startswith(f"seat.toml, line {line}: ")


LOGS = [
    ("time,temp (C),humidity\n2024-01-30 12:00,70,35\n2024-07-31 12:00,75,60\n", "hotter than any room"),
    (
        "time,temp (C),dampness\n2024-01-30 12:00,20,35\n2024-07-31 12:00,22,60\n",
        "rename the column that holds it to humidity",
    ),
]


@pytest.mark.parametrize(("log", "fragment"), LOGS)
def test_a_log_that_cannot_be_used_is_reported_with_the_other_mistakes(tmp_path, log, fragment):
    (tmp_path / "room.csv").write_text(log, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        brief_of(
            tmp_path, GOOD.replace(SEASONS, '[house]\nlog = "room.csv"\n').replace('kind = "seat"', 'kind = "seet"')
        )
    at_kind, at_log = caught.value.problems
    assert "seet" in at_kind and at_log.startswith("seat.toml, line 15: ") and fragment in at_log


BOARDS = '[[boards]]\nname = "A"\nwidth = "{}"\nlength = "8 ft"\nthickness = "1 in"\n[[hardware]]\nname = "pull"'
UNUSUAL = [
    ('border_width = "2 in"', 'border_width = "9 in"', 7, "on both sides of piece.width '20 in' leaves 2 in (50.8 mm)"),
    ('border_thickness = "7/8 in"', 'border_thickness = "1/8 in"', 8, "is far less than piece.thickness '7/8 in'"),
    ('moisture = "8 %"', 'moisture = "8 %"\nout_of_flat = "1 in"', 13, "is more than piece.thickness '7/8 in'"),
    ('[[hardware]]\nname = "pull"', BOARDS.format("3/4 in"), 20, "glued up from more than 20 strips"),
    (
        "[house.seasons.winter]",
        '[finish]\nname = "shellac"\ncoats = 0\n[house.seasons.winter]',
        16,
        "finish.coats is 0",
    ),
    ('length = "44 in"', 'length = "15 in"', 4, "the grain runs along the shorter side"),
    ('humidity = "25 %"', 'humidity = "75 %"', 14, "the winter is damper than the summer"),
]


@pytest.mark.parametrize(("before", "after", "line", "fragment"), UNUSUAL)
def test_what_is_unusual_is_told_and_taken_as_written(tmp_path, before, after, line, fragment):
    assert brief_of(tmp_path, GOOD).remarks == ()
    (remark,) = brief_of(tmp_path, GOOD.replace(before, after, 1)).remarks
    assert remark.startswith(f"seat.toml, line {line}: ") and fragment in remark


NAMES = [
    ("constructions", 'constructions = ["bredboard end", "walls"]', 2, "constructions holds 'bredboard end'"),
    ("constructions", 'constructions = ["bredboard end", "walls"]', 2, "constructions holds 'walls'"),
    ("finish", 'finish.name = "xyzzy"', 3, "write one of: bare wood; Linseed oil; "),
    ("finish", 'finish.name = "shelac"', 3, "did you mean Shellac?"),
    ("study", "handout.nope.x = 1", 4, "There is no study 'nope'"),
    ("input", 'handout.panel-movement.width = "9 m"', 5, "handout.panel-movement.width: Width across the grain is"),
]


@pytest.mark.parametrize(("what", "wrong", "line", "fragment"), NAMES)
def test_names_that_the_kit_does_not_know_come_with_all_other_mistakes(tmp_path, what, wrong, line, fragment):
    good = {"constructions": "", "finish": "", "study": "", "input": ""} | {what: wrong}
    text = GOOD.replace('title = "Seat"', "\n".join(['title = "Seat"', *good.values()])).replace('"October"', '"Okt"')
    (tmp_path / "seat.toml").write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        checked_brief(tmp_path / "seat.toml")
    (sentence,) = [sentence for sentence in caught.value.problems if fragment in sentence]
    assert sentence.startswith(f"seat.toml, line {line}: ")
    assert any("built_in is 'Okt'" in sentence for sentence in caught.value.problems)
    assert all(len(sentence.splitlines()) == 1 for sentence in caught.value.problems)


DRIPPING = [
    (SEASONS, OUTDOORS, 17, "house.moisture_gain: the air of the room is 99 % RH on average of the year"),
    ('humidity = "60 %"', 'humidity = "100 %"', 14, "house.seasons: the air of the room is 100 % RH on average"),
]


@pytest.mark.parametrize(("before", "after", "line", "fragment"), DRIPPING)
def test_a_room_kept_at_saturation_is_blamed_on_its_key(tmp_path, before, after, line, fragment):
    text = GOOD if before == SEASONS else GOOD.replace('humidity = "25 %"', 'humidity = "100 %"')
    (tmp_path / "seat.toml").write_text(text.replace(before, after), encoding="utf-8")
    with pytest.raises(InputError) as caught:
        checked_brief(tmp_path / "seat.toml")
    (sentence,) = caught.value.problems
    assert sentence.startswith(f"seat.toml, line {line}: ") and fragment in sentence and "at most 28 % MC" in sentence


def test_a_size_that_only_the_setting_out_refuses_has_the_line_of_the_piece(tmp_path):
    huge = GOOD.replace('"seat"', '"turned part"').replace('width = "20 in"', 'width = "15 ft"')
    (tmp_path / "seat.toml").write_text(huge.replace('length = "44 in"', 'length = "6 m"'), encoding="utf-8")
    with pytest.raises(
        InputError, match="^seat.toml, line 2: volume is 98.52\\d+ m3; it must be above 0 and up to 5 m3"
    ):
        checked_brief(tmp_path / "seat.toml")


def test_a_piece_as_wide_as_can_be_still_has_its_sliders(tmp_path):
    (tmp_path / "seat.toml").write_text(GOOD.replace('width = "20 in"', 'width = "15 ft"'), encoding="utf-8")
    width = next(
        span for span in commission_of(checked_brief(tmp_path / "seat.toml")).study().inputs if span.key == "width"
    )
    assert width.start == pytest.approx(4.572) and 5.5 < width.high <= 6.0


def test_the_same_room_with_a_dehumidifier_is_taken(tmp_path):
    (tmp_path / "seat.toml").write_text(
        GOOD.replace(SEASONS, OUTDOORS + 'dehumidifier_holds = "55 %"\n'), encoding="utf-8"
    )
    assert checked_brief(tmp_path / "seat.toml").house.dehumidifier_holds_percent == 55.0


def test_an_empty_brief_names_every_required_key(tmp_path):
    with pytest.raises(InputError) as caught:
        brief_of(tmp_path, "")
    required = {
        "title",
        "piece.kind",
        "piece.width",
        "piece.length",
        "piece.thickness",
        "wood.species",
        "wood.built_in",
    }
    missing = {s.split(": ", 1)[1].split(" is missing")[0] for s in caught.value.problems if " is missing; write" in s}
    assert required <= missing


@pytest.mark.parametrize(
    ("content", "fragment"),
    [
        (b'title = "' + b"x" * 10_000_000 + b'"', "has 10000010 bytes; a brief has at most 1000000"),
        (b"title = '\xff'", "line 1: a letter is not in UTF-8; save the file as UTF-8 text"),
        (b"title = " + b"[" * 100_000, "brackets are nested too deeply"),
        (b"title = " + b"9" * 10_000, "line 1: this line cannot be read as TOML (a number has too many digits)"),
    ],
)
def test_a_hostile_file_is_refused_in_one_sentence(tmp_path, content, fragment):
    (tmp_path / "seat.toml").write_bytes(content)
    with pytest.raises(InputError) as caught:
        read_brief(tmp_path / "seat.toml")
    (sentence,) = caught.value.problems
    assert fragment in sentence and len(sentence.splitlines()) == 1 and len(sentence) < 300


@pytest.mark.parametrize(
    ("path", "fragment"),
    [
        ("missing.toml", "there is no brief at 'missing.toml'"),
        ("/dev/zero", "there is no brief at '/dev/zero'"),
        (".", "there is no brief at"),
        ("a\0b", "give the path of a .toml file"),
        ("", "path of the brief is ''"),
        (None, "path of the brief is None"),
        (7, "path of the brief is 7"),
    ],
)
def test_a_bad_path_is_refused(path, fragment):
    with pytest.raises(InputError) as caught:
        read_brief(path)
    assert fragment in str(caught.value) and len(caught.value.problems) == 1


def test_a_new_brief_needs_an_existing_folder(tmp_path):
    with pytest.raises(InputError, match="cannot be written .*choose a folder that exists"):
        write_template(tmp_path / "nowhere" / "b.toml")


def test_a_length_that_was_not_given_is_not_invented(tmp_path):
    with pytest.raises(InputError, match="'piece.hight' is not given in seat.toml"):
        brief_of(tmp_path, GOOD).exact_m("piece.hight")
