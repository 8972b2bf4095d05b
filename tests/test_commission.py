"""From a brief to words: names checked with their lines, everything escaped, advice and what would turn it over."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from pathlib import Path

import nbformat
import pytest

from woodlib import commission as telling
from woodlib.commission import CLIENT, SHOP, checked_brief, checked_commission, chosen_brief, commission_of
from woodlib.commission.card import listed, paragraphs, table, told
from woodlib.commission.contents import entries
from woodlib.commission.margin import safe_humidity_percent
from woodlib.commission.names import find_way, ways_of
from woodlib.commission.verdicts import verdict_lines
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.moisture.equilibrium import emc_percent, rh_percent_for_emc
from woodlib.moisture.resting import resting
from woodlib.moisture.stock import Stock
from woodlib.opening import notebooks_folder
from woodlib.units import both, inch_fraction
from woodlib.ways.registry import every_way, kinds, ways_for
from woodlib.ways.verdict import risk_levels
from woodlib.words.decided import pick
from woodlib.words.say import length, say

SEAT = data_path("briefs/reading_nook_seat.toml")
BOARD = data_path("briefs/serving_board.toml")
CARDS = (
    telling.opening,
    telling.why_it_moves,
    telling.comparison_table,
    telling.decision,
    telling.cut_list,
    telling.stock_ready,
    telling.worked_size,
    telling.cautions,
    telling.care_note,
    telling.small_print,
)

PLAIN = """title = "Table"
[piece]
kind = "table top"
width = "900 mm"
length = "2 m"
thickness = "30 mm"
border_width = "60 mm"
border_thickness = "30 mm"
[wood]
species = "sugar maple"
moisture = "9 %"
built_in = "May"
[house.seasons]
winter = {temperature = "20 degC", humidity = "35 %"}
summer = {temperature = "26 degC", humidity = "65 %"}
"""


OWN_WOODS = (
    "name,radial_shrinkage_percent,tangential_shrinkage_percent,specific_gravity_basic\nhedge wood,4.5,8.5,0.6\n"
)


@pytest.fixture
def write(tmp_path: Path):
    """A brief from the plain one with some text replaced and some added."""

    def make(*changes: tuple[str, str], after: str = "") -> Path:
        text = PLAIN
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        path = tmp_path / "table.toml"
        path.write_text(text + after, encoding="utf-8")
        return path

    return make


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: set[str] = set()
        self.attributes: set[str] = set()

    def handle_starttag(self, tag, attrs):
        if tag not in ("img", "input"):
            self.open.append(tag)
        elif tag == "img":
            assert dict(attrs)["src"].startswith("data:image/svg+xml") and dict(attrs)["alt"]
        self.seen.add(tag)
        self.attributes |= {name for name, _ in attrs}

    def handle_endtag(self, tag):
        assert self.open.pop() == tag


def tags_of(html: str) -> _Tags:
    parsed = _Tags()
    parsed.feed(html)
    assert parsed.open == [], "every element is closed"
    return parsed


# --- which brief ---------------------------------------------------------------------------------------------------


def test_the_demonstration_is_the_default():
    assert chosen_brief().path == SEAT
    assert chosen_brief(BOARD).path == BOARD == chosen_brief("serving_board.toml").path
    with pytest.raises(InputError, match="no brief at"):
        chosen_brief("somewhere/serving_board.toml")


def test_the_same_bytes_are_judged_once_and_others_anew(write):
    path = write()
    made = checked_commission(path)
    assert checked_commission(str(path)) is made and commission_of(made.brief) is made
    path.write_text(path.read_text("utf-8").replace("9 %", "8 %"), encoding="utf-8")
    assert checked_commission(path).brief.stock.mc_percent == 8.0 and made.brief.stock.mc_percent == 9.0


def test_a_file_beside_the_brief_that_changes_is_read_anew(write, tmp_path):
    own = tmp_path / "woods.csv"
    own.write_text(OWN_WOODS, encoding="utf-8")
    path = write(('species = "sugar maple"', 'species = "hedge wood"\nown_species = "woods.csv"'))
    made = checked_commission(path)
    assert checked_commission(path) is made
    own.write_text(OWN_WOODS + "\n", encoding="utf-8")
    assert checked_commission(path) is not made


def test_what_a_table_of_ones_own_lacks_is_said_at_the_line_of_the_wood(write, tmp_path):
    (tmp_path / "woods.csv").write_text(OWN_WOODS.replace(",specific_gravity_basic", "").replace(",0.6", ""), "utf-8")
    path = write(('species = "sugar maple"', 'species = "hedge wood"\nown_species = "woods.csv"'))
    with pytest.raises(InputError, match="table.toml, line 10: .* needs specific_gravity_basic, which .*own_species"):
        checked_brief(path)


def test_the_notebook_shows_the_cards_of_the_page_in_their_order():
    cells = nbformat.read(notebooks_folder() / "11-the-commission.ipynb", as_version=4).cells
    called = [
        name for cell in cells if cell.cell_type == "code" for name in re.findall(r"(\w+)\(commission\)", cell.source)
    ]
    both = [entry.__name__ for entry in (*entries(CLIENT), *SHOP)]
    listed_names = [
        name for place, name in enumerate(both) if name not in both[place + 1 :]
    ]  # sources stand at the end
    assert [name for name in called if name in listed_names] == listed_names
    shown_cells = [cell for cell in cells if "lesson-only" not in cell.metadata.get("tags", ())]
    assert not [cell.source for cell in shown_cells if cell.cell_type == "markdown"], "the page has no words of its own"


@pytest.mark.parametrize("way", every_way(), ids=lambda way: way.key)
def test_a_way_is_found_by_each_of_its_names(way):
    for name in (way.key, way.key.replace("_", " ").upper(), way.name, way.short, *way.also):
        assert find_way(name) is way


@pytest.mark.parametrize(
    ("name", "key"), [("breadboard ends", "breadboard"), ("frame and panel", "frame_panel"), ("Battens", "battens")]
)
def test_a_way_is_found_by_its_name_in_the_trade(name, key):
    assert find_way(name).key == key


def test_ways_that_make_no_sense_are_left_out(write):
    assert len(ways_of(checked_brief(write()))) == 19
    no_border = checked_brief(write(('border_width = "60 mm"\nborder_thickness = "30 mm"\n', "")))
    gone = set(ways_of(checked_brief(write()))) - set(ways_of(no_border))
    assert gone == {
        "glued_border",
        "glued_face_rim",
        "own_blank_rim",
        "same_grain_border",
        "mitred_breadboard",
        "banded_sheet",
    }
    assert set(ways_of(checked_brief(BOARD))).isdisjoint({"buttons", "frame_panel"})
    misplaced = write(('title = "Table"\n', 'title = "Table"\nconstructions = ["drawer bottom"]\n'))
    with pytest.raises(InputError, match="serves no table top; what does: battens below"):
        ways_of(checked_brief(misplaced))


def test_the_ways_of_the_brief_are_the_ways_compared(write):
    brief = checked_brief(
        write(('title = "Table"\n', 'title = "Table"\nconstructions = ["battens", "glued border"]\n'))
    )
    made = commission_of(brief)
    assert {verdict.key for verdict in made.verdicts} == {"battens", "glued_border"} and made.built.key == "battens"


def test_the_way_kept_for_the_handout_has_any_of_its_names(write):
    made = commission_of(checked_brief(write(after='[handout.ways-to-build]\nway = "breadboard end"\n')))
    assert made.built.key == "breadboard" == made.study().start["way"]


def test_no_coats_are_no_finish_and_coats_left_out_are_the_usual_number(write):
    bare = checked_brief(write(after='[finish]\nname = "shellac"\ncoats = 0\n'))
    assert bare.table_finish().label == "bare wood" and "finish.coats is 0" in bare.remarks[0]
    usual = checked_brief(write(after='[finish]\nname = "shellac"\n'))
    assert usual.table_finish().coats == 3 and usual.remarks == ()


def test_the_finish_is_looked_up():
    assert checked_brief(SEAT).table_finish().coats == 3
    assert checked_brief(BOARD).table_finish().label == "bare wood"


# --- what is wrong with a brief ------------------------------------------------------------------------------------

FINISH = '[finish]\nname = "{}"\ncoats = {}\n'


@pytest.mark.parametrize(
    ("changes", "after", "line", "fragment"),
    [
        (
            [('title = "Table"\n', 'title = "Table"\nconstructions = ["bredboard"]\n')],
            "",
            2,
            "Did you mean 'breadboard",
        ),
        ([], FINISH.format("shelac", 2), 17, "did you mean Shellac"),
        ([], FINISH.format("shellac", 17), 18, "coats is 17"),
        ([], '[handout.ways-to-bild]\nwidth = "1 m"\n', 16, "Did you mean 'ways-to-build'"),
        ([], '[handout.ways-to-build]\nwitdh = "1 m"\n', 17, "Did you mean 'width'"),
        ([], '[handout.ways-to-build]\nwidth = "5 m"\n', 17, "handout.ways-to-build.width: Width of the whole piece"),
        (
            [],
            '[handout.ways-to-build]\nway = "nosuch"\n',
            17,
            "handout.ways-to-build.way is 'nosuch'; the ways to build",
        ),
        ([], '[handout.ways-to-build]\nway = "drawer front"\n', 17, "not among the ways compared for this table top: "),
        (
            [('title = "Table"\n', 'title = "Table"\nconstructions = ["drawer front"]\n')],
            "",
            2,
            "constructions holds 'drawer front', which serves no table top",
        ),
        ([], "[handout.moisture-from-air]\noutdoors = 3\n", 17, "has no input 'outdoors'"),
        ([('length = "2 m"', 'length = "9 m"')], "", 5, "piece.length is '9 m'; it must be at most"),
    ],
)
def test_a_wrong_name_is_said_with_its_line(write, changes, after, line, fragment):
    with pytest.raises(InputError) as caught:
        checked_brief(write(*changes, after=after))
    (sentence,) = caught.value.problems
    assert sentence.startswith(f"table.toml, line {line}: ") and fragment in sentence and "\n" not in sentence


def test_all_wrong_names_are_said_at_once(write):
    path = write(
        ('title = "Table"\n', 'title = "Table"\nconstructions = ["glued border", "dovetail", "nails"]\n'),
        after=FINISH.format("shelac", 2) + "[handout.nothing]\nx = 1\n",
    )
    with pytest.raises(InputError) as caught:
        checked_brief(path)
    assert [sentence.split(":")[0] for sentence in caught.value.problems] == [
        "table.toml, line 2",
        "table.toml, line 2",
        "table.toml, line 18",
        "table.toml, line 20",
    ]


# --- the decision ---------------------------------------------------------------------------------------------------


def test_the_best_way_is_built_unless_the_maker_decides():
    made = commission_of(chosen_brief(SEAT))
    assert made.built is made.advised and made.built.allowed
    other = made.building("breadboard end")
    assert other.built.key == "breadboard" and "both come through this house unharmed" in str(telling.decision(other))
    with pytest.raises(InputError, match="not among the ways compared"):
        commission_of(chosen_brief(BOARD)).building("buttons")


def test_a_refused_way_is_refused_in_the_letter_too():
    refused = commission_of(chosen_brief(SEAT), "glued border")
    assert "we advise against it and would build a frame" in str(telling.four_lines(refused))
    said = str(telling.decision(refused))
    assert "Glue is refused" in said and "Our advice: a frame with a floating panel" in said
    assert "border glued across the ends (asked for)" in str(telling.comparison_table(refused))


def test_a_handout_keeps_the_way_and_the_sliders(write):
    brief = checked_brief(write(after='[handout.ways-to-build]\nway = "battens"\nwidth = "1 m"\n'))
    made = commission_of(brief)
    assert made.built.key == "battens"
    assert made.study().start["way"] == "battens" and made.study().start["width"] == 1.0


@pytest.mark.parametrize("moisture", ["5 %", "7 %", "9 %", "12 %"])
def test_a_card_never_says_both_that_glue_is_allowed_and_that_no_house_will_do(write, moisture):
    made = commission_of(checked_brief(write(('moisture = "9 %"', f'moisture = "{moisture}"'))), "glued border")
    said = str(telling.decision(made))
    assert ("Glue is allowed" in said) == made.built.allowed == ("is allowed in this house" in said)
    assert not ("Glue is allowed" in said and "No house" in said)


# --- the words ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("path", [SEAT, BOARD], ids=lambda path: path.stem)
@pytest.mark.parametrize("card", CARDS, ids=lambda card: card.__name__)
def test_every_card_is_sound_html_and_says_the_same_as_text(card, path):
    shown = card(commission_of(chosen_brief(path)))
    tags_of(shown.html)
    plain = re.sub(r"<[^>]+>", " ", shown.html)
    for number in re.findall(r"\d+(?:-\d+/\d+)? (?:in|mm|%)", shown.text):
        assert number in plain
    assert not re.search(r"\d\.\d+ in\b", shown.text), "inches are fractions"
    assert shown._repr_mimebundle_()[0]["text/html"] == shown.html


SIZES = {"turned part": ("25 mm", "50 mm", "25 mm"), "drawer bottom": ("400 mm", "500 mm", "10 mm")}


@pytest.mark.parametrize("kind", kinds())
def test_every_kind_of_piece_is_told_whichever_way_it_is_built(write, kind):
    width, length_, thick = SIZES.get(kind, ("300 mm", "600 mm", "22 mm"))
    border = "" if kind in SIZES else 'border_width = "40 mm"\nborder_thickness = "22 mm"\n'
    brief = checked_brief(
        write(
            ('kind = "table top"', f'kind = "{kind}"'),
            (
                'width = "900 mm"\nlength = "2 m"\nthickness = "30 mm"',
                f'width = "{width}"\nlength = "{length_}"\nthickness = "{thick}"',
            ),
            ('border_width = "60 mm"\nborder_thickness = "30 mm"\n', border),
        )
    )
    made = commission_of(brief)
    assert {verdict.key for verdict in made.verdicts} <= {way.key for way in ways_for(kind)}
    for verdict in made.verdicts:
        built = made.building(verdict.key)
        for card in (*CARDS, telling.shop_cards):
            text = str(card(built))
            assert text.strip() and "{" not in text and " a a " not in text and "None" not in text
            assert not re.search(r"\d\.\d+ in\b|\b0 in\b|\d\.\d{4,} %", text), (kind, verdict.key, card.__name__)
    assert made.study().answer().lines() and made.compared().answer().lines()


@pytest.mark.parametrize(
    ("moisture", "said"),
    [
        ("9 %", "Yes: 9.0 % MC"),
        ("8.1 %", "It can be used: 8.1 % MC"),
        ("15 %", "could only shrink"),
        ("4 %", "only grow"),
    ],
)
def test_the_stock_is_ready_near_the_middle_of_the_year_and_not_beyond_it(write, moisture, said):
    """This air goes from 6.9 to 11.4 % MC (20 degC and 35 %, 26 degC and 65 %), the wood in it from 7.8 to 10.5."""
    brief = checked_brief(write(('moisture = "9 %"', f'moisture = "{moisture}"')))
    asked = str(telling.stock_ready(commission_of(brief)))
    assert said in asked and ("On stickers" in asked) == (not said.startswith("Yes"))
    assert "In May this house keeps wood at about" in asked and "lists no boards on hand" in asked


def test_boards_that_stood_wet_rest_for_as_long_as_the_diffusion_says(write):
    brief = checked_brief(write(('moisture = "9 %"', 'moisture = "15 %"')))
    made = commission_of(brief)
    middle = float(made.months.mc_percent.mean())
    rest = resting(Stock.of("sugar maple", 0.03), 20.0, float(rh_percent_for_emc(20.0, middle)), 15.0, 0.5)
    assert f"in about {round(rest.days.mid / 7)} weeks" in str(telling.stock_ready(made))


HOSTILE = ("</script><script>alert(1)</script>", "<img src=x onerror=alert(1)>", "\"><b>&amp;'", "x" * 200)


@pytest.mark.parametrize("name", HOSTILE, ids=range(len(HOSTILE)))
def test_nothing_in_a_brief_becomes_markup(write, name):
    typed = name.replace("\\", "\\\\").replace('"', '\\"')
    path = write(
        ('title = "Table"\n', f'title = "{typed}"\nmaker = "{typed}"\nclient = "{typed}"\nnotes = "{typed}"\n'),
        after=f'[[hardware]]\nname = "{typed if len(name) <= 60 else "x" * 60}"\ncentres = "96 mm"\nruns = "across the grain"\n',
    )
    made = commission_of(checked_brief(path))
    for card in (*CARDS, telling.shop_cards):
        seen = tags_of(card(made).html)
        assert seen.seen <= {
            "h1",
            "h2",
            "h3",
            "h4",
            "p",
            "strong",
            "table",
            "details",
            "summary",
            "caption",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "ul",
            "ol",
            "li",
            "div",
            "figure",
            "img",
            "input",
            "label",
        }
        assert seen.attributes <= {
            "class",
            "type",
            "scope",
            "style",
            "data-head",
            "alt",
            "src",
            "tabindex",
            "role",
            "aria-label",
        }
    assert name in str(telling.opening(made))


def test_a_screw_pair_across_the_grain_is_told_how_far_it_moves(write):
    path = write(after='[[hardware]]\nname = "catch"\ncentres = "96 mm"\nruns = "across the grain"\n')
    framed = commission_of(checked_brief(path)).building("frame_panel")
    assert framed.built.key == "frame_panel" and "grain runs that way" in str(telling.opening(framed))  # in its rail
    made = framed.building("battens")
    share = 0.096 / made.built.quantities["width"] * made.built.moves.high_m
    assert share == pytest.approx(0.096 / 0.9 * made.whole_moves.high_m)
    tenth = float(re.search(r"changes by up to [\d/ ]+in \(([\d.]+) mm\)", str(telling.opening(made)))[1])
    assert share * 1000 <= tenth <= share * 1000 + 0.1


def test_the_cut_list_rounds_the_safe_way():
    made = commission_of(chosen_brief(SEAT))
    rows = [line.split(" | ") for line in str(telling.cut_list(made)).splitlines() if line.count(" | ") == 3][1:]
    assert len(rows) == len(made.built.cuts)
    for row, cut in zip(rows, made.built.cuts, strict=True):
        marked = float(cut.written_m())
        assert (marked >= cut.metres - 1e-9) if cut.rounding == "up" else (marked <= cut.metres + 1e-9)
        assert row[1] == cut.text() and row[1].startswith(inch_fraction(cut.written_m(), 64))
        assert row[2] == cut.rounding


def test_the_parts_come_out_at_the_size_that_was_ordered():
    """By hand: two stiles of 2 in and 16 in between them make 20 in; each rail has 1-1/4 in of tenon at both ends."""
    said = str(telling.shop_cards(commission_of(chosen_brief(SEAT))))
    for row in ("2 x stile | 44 in (1117.6 mm) x 2 in (50.8 mm)", "2 x rail | 18-1/2 in (469.9 mm) x 2 in (50.8 mm)"):
        assert row in said, row
    seat = commission_of(chosen_brief(SEAT))
    for verdict in seat.verdicts:
        made = telling.setting_out_of(seat.building(verdict.key)).made
        whole = [both(size) for size in made.size_m[:2]]
        assert verdict.way.fitted or whole == ["44 in (1118 mm)", "20 in (508 mm)"], verdict.key


def test_the_room_left_is_where_a_usual_board_meets_its_gap():
    """At the humidity named a likely board has moved as far as the careful board does in the driest or dampest month."""
    made = commission_of(chosen_brief(SEAT))
    low, high = safe_humidity_percent(made)
    numbers, sliding = made.built.quantities, made.sliding
    assert low < sliding.driest.rh_percent and high > sliding.dampest.rh_percent
    per_point = numbers["swing_mid"] / (numbers["dampest_mc"] - numbers["driest_mc"])
    for humidity, air, way in ((low, sliding.driest, "narrowing"), (high, sliding.dampest, "widening")):
        moved = abs(float(emc_percent(air.temperature_c, humidity)) - numbers["stock_mc"]) * per_point
        assert moved == pytest.approx(numbers[f"{way}_high"], rel=0.06) and moved <= numbers[f"{way}_high"] + 1e-6
    held = made.building("glued border")
    assert safe_humidity_percent(held) == (25, 62), "what is held has no room beyond the year it was judged for"


def test_each_piece_gets_its_own_cautions():
    seat, board = (str(telling.cautions(commission_of(chosen_brief(path)))) for path in (SEAT, BOARD))
    assert "stay that holds it open" in seat and "carries a person" in seat
    assert "stay" not in board and "carries a person" not in board


def test_a_glued_border_is_told_as_what_the_panel_would_do():
    said = str(telling.care_note(commission_of(chosen_brief(SEAT), "glued border")))
    assert "All through the year it keeps its width, held by its glue." in said and "Watch the ends" in said


def test_a_size_worked_out_adds_up():
    """Done by hand from the printed terms of the seat's groove: 6.35 + 1.6 + half of shrinking and growing."""
    made = commission_of(chosen_brief(SEAT))
    said = str(telling.worked_size(made, "stile_groove_depth"))
    rows = [line.split(" | ") for line in said.splitlines()[2:]]
    millimetres = [float(re.search(r"\(([\d.]+) mm\)", row[2])[1]) for row in rows]
    counts = [float(row[1].removesuffix(" x")) for row in rows[:-2]]
    assert sum(count * size for count, size in zip(counts, millimetres, strict=False)) == pytest.approx(
        millimetres[-2], abs=0.25
    )
    assert millimetres[-1] >= millimetres[-2] - 0.05


def test_the_care_note_names_the_air_it_is_made_for():
    said = str(telling.care_note(commission_of(chosen_brief(SEAT))))
    assert "between 25 % and 62 % humidity" in said and "Around March" in said and "When to call us" in said


def test_the_system_of_the_brief_comes_first():
    assert "280 mm (11 in)" in str(telling.opening(commission_of(chosen_brief(BOARD))))
    assert "20 in (508 mm)" in str(telling.opening(commission_of(chosen_brief(SEAT))))
    assert (
        told(say("{a} {b}", a=length(0.0061, "up"), b=pick(1.0, [0.5], ["no", length(0.01)])), "metric")
        == "7 mm (9/32 in) 10 mm (13/32 in)"
    )


def test_cards_escape_what_they_show():
    for card in (paragraphs("<b>"), listed(["<b>"]), table(("<b>", "&"), [("<i>", '"')], "<u>")):
        assert not re.search(r"<[biu]>", card.html) and "&lt;" in card.html


def test_the_words_of_risk_are_those_of_the_table():
    assert [level.word for level in risk_levels()] == ["safe", "strained", "cracking"]


@pytest.mark.parametrize(
    ("kind", "said"),
    [("lid", "needs a stay"), ("drawer front", "can tip over on a child"), ("door panel", "can tip over")],
)
def test_where_the_work_can_hurt_is_said_for_the_kind_of_piece(write, kind, said):
    brief = checked_brief(write(('kind = "table top"', f'kind = "{kind}"'), after=FINISH.format("shellac", 2)))
    cautions = str(telling.cautions(commission_of(brief)))
    assert said in cautions and "fumes" in cautions and "oily rags" in cautions and "Local codes" in cautions
    assert "fumes" not in str(telling.cautions(commission_of(checked_brief(write()))))


def test_what_lifts_is_screwed_to_no_base_and_what_the_trade_takes_first_leads(write):
    """Found by a maker: buttons were called sensible for a seat that lifts, and a table top was framed first."""
    on_a_base = {"buttons", "slotted_blocks", "figure_plates", "slotted_plates", "kerf_clips"}
    assert not on_a_base & set(ways_of(chosen_brief(SEAT))) and on_a_base <= set(ways_of(checked_brief(write())))
    assert commission_of(checked_brief(write())).advised.key == "breadboard"
    back = write(('kind = "table top"', 'kind = "back"'), ('border_width = "60 mm"\nborder_thickness = "30 mm"\n', ""))
    made = commission_of(checked_brief(back))
    assert made.advised.key == "lapped_back" and "border kept" not in str(telling.comparison_table(made))
    assert "Only if every board lies flat" in str(telling.stock_ready(commission_of(chosen_brief(SEAT))))


def test_wood_drier_than_the_house_needs_no_room_to_shrink_and_a_still_house_moves_it_hardly_at_all(write):
    dry = commission_of(checked_brief(write(('moisture = "9 %"', 'moisture = "2 %"')))).building("frame_panel")
    assert "nothing: it only goes the other way" in str(telling.worked_size(dry))
    still = write(
        ('temperature = "26 degC", humidity = "65 %"', 'temperature = "20 degC", humidity = "35 %"'),
    )
    said = str(telling.care_note(commission_of(checked_brief(still)))) + str(
        telling.why_it_moves(commission_of(checked_brief(still)))
    )
    assert "less than can be seen" in said and not re.search(r"(?<!\d)-\d|\b0 in\b|\b0 mm\b", said)


@pytest.mark.parametrize(
    ("months", "unknown", "built_in"),
    [
        (range(5, 10), "October to April", "not known, so nor is"),
        ((1, *range(3, 13)), "February", "In May this house keeps"),
    ],
)
def test_a_log_that_lacks_months_says_so_before_anything_else(tmp_path, months, unknown, built_in):
    rows = ["time;temp C;rh"]
    rows += [
        f"2023-{month:02d}-{day:02d} 12:00;21;{30 + 5 * min(month, 13 - month)}"
        for month in months
        for day in range(1, 29)
    ]
    (tmp_path / "room.csv").write_text("\n".join(rows), encoding="utf-8")
    text = PLAIN[: PLAIN.index("[house.seasons]")] + '[house]\nlog = "room.csv"\n'
    (tmp_path / "table.toml").write_text(
        text.replace('"May"', '"October"') if "not known" in built_in else text, encoding="utf-8"
    )
    commission = checked_commission(tmp_path / "table.toml")
    first, second = list(verdict_lines(commission))[:2]
    assert first.startswith("Table:") and second.startswith(f"The air of {unknown} is not known")
    for begins in (telling.title(commission), telling.for_the_workshop(commission)):
        assert f"The air of {unknown} is not known" in begins.html
    assert "humidity, as it was measured" in telling.four_lines(commission).html
    assert built_in in telling.stock_ready(commission).html


def test_the_range_of_a_house_known_by_its_kind_holds_that_houses_differ(tmp_path):
    ranges = []
    for house in ('climate = "Chicago"\n', 'log = "room.csv"\nclimate = "Chicago"\n'):
        text = PLAIN[: PLAIN.index("[house.seasons]")] + "[house]\n" + house
        (tmp_path / "table.toml").write_text(text, encoding="utf-8")
        if "log" in house:  # the same year, measured
            months = ranges[0].year
            rows = [
                f"2023-{month:02d}-{day:02d} 12:00;{months.temperature_c[month - 1]:.2f};{months.rh_percent[month - 1]:.2f}"
                for month in range(1, 13)
                for day in range(1, 29)
            ]
            (tmp_path / "room.csv").write_text("\n".join(["time;temp C;rh", *rows]), encoding="utf-8")
        ranges.append(checked_commission(tmp_path / "table.toml"))
    by_kind, measured = (commission.whole_moves for commission in ranges)
    assert by_kind.mid_m == pytest.approx(measured.mid_m, rel=0.01)
    assert by_kind.high_m - by_kind.low_m > 1.2 * (measured.high_m - measured.low_m)
    assert 1.5 < ranges[0].year.houses_differ_percent < 2.5 and ranges[1].year.houses_differ_percent == 0.0
