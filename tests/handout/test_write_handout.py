"""The main job without a screen: a brief goes in, one HTML file comes out, and it says what the library says."""

from __future__ import annotations

import re
from html import escape, unescape
from pathlib import Path

import nbformat
import pytest

from woodlib.commission import DEMO, asking, chosen_brief, commission_of, four_lines
from woodlib.commission.pair import the_pair
from woodlib.data_files import data_path
from woodlib.errors import InputError
from woodlib.handout import handout_from_notebook, write_handout
from woodlib.handout.cache import study_name
from woodlib.handout.client_page import shop_page
from woodlib.live import STUDY_MIME
from woodlib.opening import notebooks_folder

TYPED = '</script><script>document.title="owned"</script> & <b>"O\'Hara"</b> ' + "x" * 60
HOSTILE = """title = '''{typed}'''
maker = '''{typed}'''
client = '''{typed}'''
notes = '''{typed} {{{{ 7*7 }}}} $x^2$ **bold**'''
units = "millimetres"
constructions = ["breadboard end", "battens", "glued border"]
[piece]
kind = "table top"
width = "900 mm"
length = "2 m"
thickness = "30 mm"
[wood]
species = "sugar maple"
moisture = "9 %"
built_in = "May"
[house.seasons]
winter = {{temperature = "20 degC", humidity = "35 %"}}
summer = {{temperature = "26 degC", humidity = "65 %"}}
[[hardware]]
name = '''{typed}'''
centres = "96 mm"
runs = "across the grain"
[handout.ways-to-build]
way = "glued_border"
width = "850 mm"
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    return tmp_path_factory.mktemp("handouts")


@pytest.fixture(scope="module")
def seat(folder) -> str:
    return write_handout(data_path(DEMO), folder / "seat.html").read_text("utf-8")


@pytest.fixture(scope="module")
def hostile(folder) -> str:
    brief = folder / "hostile.toml"
    brief.write_text(HOSTILE.format(typed=TYPED), encoding="utf-8")
    return write_handout(brief, folder / "hostile.html").read_text("utf-8")


def readable(html: str) -> str:
    """What a reader sees, on one line."""
    html = re.sub(r"<(script|style)\b.*?</\1>", " ", html, flags=re.DOTALL)
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", html)).split())


def test_the_page_is_a_letter_about_the_piece(seat):
    assert seat.count("<h1") == 1 and "<title>Lift-up seat for a reading-nook bench</title>" in seat
    said = readable(seat)
    for words in (
        "For Invented client (demonstration).",
        "We build: a frame with a loose, floating panel, in white oak, with the border you wanted.",
        "moves by about 1/4 in 6 mm from March, its driest month, to September.",
        "Why wood moves, and why glue does not stop it",
        "Living with it",
        "When to call us",
        "Made by Invented workshop (demonstration), no telephone, for it is invented.",
        "How sure we are",
    ):
        assert words in said, words


def test_the_page_says_what_the_library_decides(seat):
    said = readable(seat)
    commission = commission_of(chosen_brief(data_path(DEMO)))
    for line in str(four_lines(commission)).splitlines():
        assert line.split("(")[0].split(" about ")[0].replace(":  ", ": ") in said, line
    for line in asking(commission).answer().lines(commission.page_units):
        assert line.split(": ", 1)[-1].split(" - ")[0] in said, line


def test_one_system_is_shown_at_a_time_and_each_number_is_said_once_in_both(seat, hostile):
    """Found by a client: both systems were printed, 51 times on the page of the seat."""
    for page, shown in ((seat, "inch"), (hostile, "metric")):
        body = re.sub(r"<(script|style)\b.*?</\1>", " ", page[page.index("<body") :], flags=re.DOTALL)
        assert f'data-units="{shown}"' in page
        assert not re.search(r"\d (in|mm) \(", body)
        inches, metric = (
            re.findall(rf'<span class="n {system}">([^<]*)</span>', body) for system in ("inch", "metric")
        )
        assert len(inches) == len(metric) > 10
        assert all(text.endswith(" in") for text in inches) and all(text.endswith(" mm") for text in metric)


def test_a_client_meets_no_word_of_the_trade_unexplained(seat):
    said = readable(seat).lower()
    found = re.findall(
        r"\b(?:mc|rh|strain|stiles?|grooves?|tongues?|shoulder|rounded|kerf|emc|relative humidity)\b", said
    )
    assert found == []


def test_the_client_gets_no_shop_and_the_shop_gets_all_of_it(seat):
    commission = commission_of(chosen_brief(data_path(DEMO)))
    made = shop_page(commission)
    said, client = readable(made), readable(seat)
    for words in (
        "For the workshop: Lift-up seat",
        "Is the stock ready?",
        "Order of cuts",
        "Cautions",
        "Sources and small print",
    ):
        assert words in said, words
    for words in ("For the workshop", "Is the stock ready?", "Order of cuts", "Set out, to the last hole"):
        assert words not in client, words
    for cut in commission.built.cuts:
        assert f"{cut.label} {cut.text()}" in said
    assert "finished outside, across the grain 20 in (508 mm)" in said
    assert (
        "<script" not in made and "script-src" not in made and "default-src 'none'" in made and 'id="units"' not in made
    )


def test_what_is_long_is_folded_and_the_rest_stands_open(seat):
    folded = re.findall(r'<details class="part"><summary>(.*?)</summary>', seat)
    assert folded == ["What if ...?", "What was agreed", "Why wood moves, and how sure we are"]
    opened = re.sub(r'<details class="part">.*?</section>.*?</details>', "", seat, flags=re.DOTALL)
    assert "We build:" in opened and "You do:" in opened and "When to call us" in opened
    first = seat.index('id="through-the-year"')
    assert first < seat.index("We build:") < seat.index("What if ...?") < seat.index('id="what-if"')


def test_what_is_for_the_learner_stays_out(seat):
    said = readable(seat)
    for words in (
        "Predict",
        "Exercises",
        "Worked example",
        "What we learned",
        "Write the handout",
        "import ",
        "Show the code",
    ):
        assert words not in said, words


def test_the_page_is_one_small_file_that_fetches_nothing(seat):
    assert len(seat.encode()) < 350_000
    assert "default-src 'none'" in seat
    assert (
        not re.search(r"(?:src|href|action)\s*=\s*[\"']?(?:https?:)?//", seat)
        and "@import" not in seat
        and "url(http" not in seat
    )


def test_names_and_notes_are_inert(hostile):
    assert escape(TYPED) in hostile and TYPED not in hostile
    assert len(re.findall(r"<script\b", hostile)) == 3  # the page's own, and a table for each of the piece's studies
    assert (
        "{{ 7*7 }}" in readable(hostile)
        and unescape(re.search("<title>(.*?)</title>", hostile)[1]).strip() == TYPED.strip()
    )


def test_the_page_starts_where_the_brief_says(hostile):
    said = readable(hostile)
    assert 'START_UNITS="metric"' in hostile
    assert "because it was asked for; we advise against it and would build" in said
    assert re.search(r"<option selected>as we build it: glued border", hostile)
    assert "frame with a floating panel" not in said  # only the ways that the brief names are compared


def test_a_saved_notebook_keeps_the_sliders_when_it_is_exported_again(folder):
    """The menu's export knows no running panel; it takes the places from the file, also for a study made of a brief."""
    source = notebooks_folder() / "11-the-commission.ipynb"
    notebook = nbformat.read(source, as_version=4)
    records = [
        output.data[STUDY_MIME]
        for cell in notebook.cells
        for output in cell.get("outputs", ())
        if STUDY_MIME in output.get("data", {})
    ]
    record = next(record for record in records if record["study"] == "ways-to-build")
    record["values"] |= {"way": "battens", "width": 0.4572, "driest": 1000.0}  # one of them no longer possible
    moved = folder / "moved.ipynb"
    nbformat.write(notebook, moved)
    html = handout_from_notebook(moved, folder / "moved.html").read_text("utf-8")
    assert re.search(r'data-value="width">18 in \(457 mm\)', html) and "<option selected>battens below" in html
    assert re.search(r'data-value="driest">25 % RH', html)
    assert "Exercises" not in readable(html)


def test_a_bad_brief_is_refused_before_anything_runs(folder):
    brief = folder / "bad.toml"
    brief.write_text(
        HOSTILE.format(typed="x").replace("breadboard end", "bredboard").replace("850 mm", "9 m"), encoding="utf-8"
    )
    with pytest.raises(InputError) as caught:
        write_handout(brief, folder / "bad.html")
    assert caught.value.problems[0].startswith("bad.toml, line 6: constructions holds 'bredboard'")
    assert not (folder / "bad.html").exists()


def test_nothing_but_a_handout_is_replaced(folder):
    (folder / "mine.html").write_text("<p>mine</p>", encoding="utf-8")
    with pytest.raises(InputError, match="nothing is replaced"):
        write_handout(data_path(DEMO), folder / "mine.html")
    assert (folder / "mine.html").read_text("utf-8") == "<p>mine</p>"


def test_every_study_of_the_page_is_kept_for_the_next_time():
    """The client's second study once held functions that have no name of their own, so each page froze it anew."""
    names = [
        [study_name(make(commission_of(chosen_brief(seat)))) for make in (the_pair, asking)]
        for seat in (data_path(DEMO), data_path(DEMO), f"{Path(__file__).parents[1]}/commissions/named/door.toml")
    ]
    assert None not in names[0] and names[0] == names[1] and not set(names[0]) & set(names[2])
