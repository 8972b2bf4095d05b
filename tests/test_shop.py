"""The setting out of a commission as cards: what they say, and that the page and the text say the same."""

from html.parser import HTMLParser

import pytest
from setting_out.briefs import MONTHS, brief_of, verdict_on

from woodlib.commission import checked_brief, chosen_brief, commission_of
from woodlib.commission import shop as cards
from woodlib.data_files import data_path
from woodlib.setting_out.plan import set_out
from woodlib.ways.registry import every_way

CARDS = (
    cards.parts_to_cut,
    cards.blanks_to_cut,
    cards.holes_to_bore,
    cards.dowels_to_bore,
    cards.gluing_up,
    cards.the_shop,
    cards.order_of_cuts,
    cards.weight_and_wood,
    cards.roundings_shown,
    cards.shop_cautions,
    cards.shop_drawings,
)
SEAT = commission_of(chosen_brief(), "frame_panel")
VOID = {"img", "input"}


class Balanced(HTMLParser):
    """Every tag that is opened is closed, in order; what is read is kept."""

    def __init__(self):
        super().__init__()
        self.open, self.read, self.images = [], [], []

    def handle_starttag(self, tag, attrs):
        if tag == "img":
            self.images.append(dict(attrs))
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.read.append(data)


def parsed(card):
    page = Balanced()
    page.feed(card.html)
    assert page.open == []
    return page


@pytest.fixture(scope="module")
def plan():
    return cards.setting_out_of(SEAT)


@pytest.mark.parametrize("key", [way.key for way in every_way()])
def test_every_way_has_cards_whose_page_and_text_agree(key):
    sizes = (
        ("60 mm", "400 mm", "60 mm", "12 mm")
        if key in ("round_tenon", "loose_ring")
        else ("500 mm", "900 mm", "20 mm", "50 mm")
    )
    brief = brief_of(*sizes)
    found = set_out(brief, (), verdict_on(brief, key, MONTHS, "white ash"))
    for card in CARDS:
        made = card(found)
        page = parsed(made)
        told = "".join(page.read) + "".join(image["alt"] for image in page.images)
        for line in filter(None, made.text.split("\n")):
            for cell in line.split(" | "):
                bare = cell.removeprefix("- ").split(". ", 1)[-1].removeprefix("[ ] ")
                assert bare in told or cell in told, (card.__name__, cell)


def test_the_seat_from_one_brief(plan):
    assert [part.name for part in plan.made.parts] == ["panel", "stile", "rail"]
    text = cards.shop_cards(SEAT).text
    for wanted in (
        "2 x stile | 44 in (1117.6 mm) x 2 in (50.8 mm) x 7/8 in (22.2 mm)",
        "= 20 in.",  # the frame comes out 20 in wide
        "strip 1 | B |",
        "left finger pull, 1 (in the stile) | 8-31/64 in (215.4 mm) | 3/4 in (19.1 mm)",
        "Glue lines 1, 2",
        "Cut the joints of the frame.",
        "Weight: about 20.1 lb (9.1 kg)",
        "The boards on hand give it all.",  # stiles and rails lie on the second board A
        "Tenon cheek: 8 glue lines",
        "this lid falls hard",
    ):
        assert wanted in text, wanted


def test_drawings_are_still_images_that_say_their_numbers(plan):
    page = parsed(cards.shop_drawings(plan))
    assert len(page.images) == 3  # plan, joint, the blank; story sticks are true on paper only
    for image in page.images:
        assert image["src"].startswith("data:image/svg+xml;base64,") and "in (" in image["alt"]
    assert "18-1/2 in (469.9 mm)" in page.images[0]["alt"] and "42-3/4 in" in page.images[-1]["alt"]


def test_what_is_typed_stays_text(tmp_path):
    path = tmp_path / "seat.toml"
    text = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
    text = text.replace("Lift-up seat for a reading-nook bench", '<b onclick=alert(1)>\\"').replace(
        "left finger pull", "<i>pull"
    )
    path.write_text(text.replace('name = "A"', 'name = "<u>"'), encoding="utf-8")
    card = cards.shop_cards(commission_of(checked_brief(path), "breadboard"))
    assert not any(tag in card.html for tag in ("<b ", "<i>", "<u>"))
    assert "<i>pull" in card.text and "strip 2 | <u> |" in card.text


def test_warnings_come_with_the_holes(tmp_path):
    path = tmp_path / "seat.toml"
    text = data_path("briefs/reading_nook_seat.toml").read_text(encoding="utf-8")
    path.write_text(text.replace('inset = "3/4 in"', 'inset = "1-1/2 in"'), encoding="utf-8")
    card = cards.holes_to_bore(cards.setting_out_of(commission_of(checked_brief(path), "frame_panel")))
    assert "Please check before boring:" in card.text and "an inset of up to" in card.text


def test_a_dowel_that_was_moved_says_why():
    card = cards.dowels_to_bore(cards.setting_out_of(commission_of(chosen_brief(), "breadboard")))
    assert "1 | 2-7/16 in (61.9 mm) | moved from 2 in (50.8 mm): tongue at the left end piece" in card.text


def test_tables_of_more_than_three_columns_are_marked_wide_for_phones(plan):
    assert 'class="wide"' in cards.holes_to_bore(plan).html
    for card in (cards.parts_to_cut, cards.blanks_to_cut, cards.dowels_to_bore, cards.roundings_shown):
        assert 'class="wide"' not in card(plan).html


def test_a_panel_without_listed_boards_says_what_is_assumed_and_a_lid_is_hung_last():
    brief = brief_of("500 mm", "900 mm", "20 mm", "50 mm")
    found = set_out(brief, None, verdict_on(brief, "breadboard", MONTHS, "white ash"))
    # Blank 500 + 2*6.35 + 2*3.175 = 519.05 -> 520; boards 152.4 - 2*0.79375 = 150.8125: 3.4, so 4 strips of 130.
    assert "set out in 4 strips 130 mm (5-1/8 in) wide" in cards.blanks_to_cut(found).text
    one = cards.blanks_to_cut(set_out(brief, (), verdict_on(brief, "breadboard", MONTHS, "white ash"))).text
    assert "panel, from one board" in one and "glued up" not in one
    assert cards.setting_out_of(SEAT).order.names[-1] == "hang it on its hinges"


def test_what_is_not_set_out_is_said_where_the_holes_are():
    brief = brief_of("500 mm", "900 mm", "20 mm", "50 mm")
    for key in ("buttons", "slotted_blocks", "figure_plates", "slotted_plates", "kerf_clips"):
        assert (
            "is not set out here"
            in cards.holes_to_bore(set_out(brief, (), verdict_on(brief, key, MONTHS, "white ash"))).text
        )
    assert cards.holes_to_bore(set_out(brief, (), verdict_on(brief, "drawer_front", MONTHS, "white ash"))).text == ""


def test_dowels_say_how_thick_how_deep_and_how_high():
    assert (
        "Dowels 3/8 in (9.5 mm) thick: bore 1 in (25.4 mm) deep"
        in cards.dowels_to_bore(cards.setting_out_of(SEAT)).text
    )
