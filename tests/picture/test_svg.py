"""SVG text of a picture: well-formed, one element a mark in order, words escaped, coordinates and roles as drawn."""

import re
from base64 import b64decode
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.picture.palette import ROLES
from woodlib.picture.scene import Area, Circle, Line, Picture, Window, Words, box, walk
from woodlib.picture.svg import path_data, picture_address, svg, svg_body
from woodlib.words.decided import pick
from woodlib.words.say import length, say

NAMESPACE = "{http://www.w3.org/2000/svg}"
HOSTILE = ["</svg><script>alert(1)</script>", "a & b < c > d", "\"' onload='alert(1)", "]]>", "</title>", "&lt;"]
written = st.text(st.characters(blacklist_categories=("Cs", "Cc"), blacklist_characters="\ufffe\uffff"), max_size=40)


def drawn(picture, description="words", **kwargs):
    return ElementTree.fromstring(svg(picture, description, **kwargs))


def texts(root):
    return [element.text for element in root.iter(NAMESPACE + "text")]


def of(*marks):
    return Picture("a title", 100, 80, marks)


def test_the_sheet_has_its_size_its_title_and_its_description():
    root = drawn(of(), "what is drawn", name="x")
    assert root.get("viewBox") == "0 0 100 80" and root.get("role") == "img"
    by_id = {element.get("id"): element.text for element in root.iter() if element.get("id")}
    assert by_id[root.get("aria-labelledby")] == "a title"
    assert by_id[root.get("aria-describedby")] == "what is drawn"


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text):
    picture = Picture(
        text,
        10,
        10,
        (Words(1, 2, text), Words(1, 2, say("{who}", who=text)), Words(1, 2, pick(1.0, [2.0], [text, "b"]))),
    )
    root = drawn(picture, text)
    assert texts(root) == [text] * 3
    assert root.find(NAMESPACE + "title").text == text and root.find(NAMESPACE + "desc").text == text
    assert not list(root.iter(NAMESPACE + "script"))
    assert {name for element in root.iter() for name in element.attrib} & {"onload", "onclick"} == set()


@given(written, written)
def test_any_text_comes_back_as_it_was(title, words):
    root = drawn(Picture(title, 10, 10, (Words(1, 2, words),)), words)
    normal = words.replace("\r", "\n") or None
    assert texts(root) == [normal]


def test_every_mark_is_one_element_in_drawing_order():
    window = Window(box(0, 0, 50, 50), (Circle(5, 6, 7, "late-wood"), Line([(0, 0), (1, 1)])))
    picture = of(Area(box(0, 0, 10, 10), "wood"), window, Words(3, 4, "end"), Circle(1, 2, 3, "metal", filled=True))
    tags = re.findall(r"<(path|circle|text)\b", svg_body(picture))
    expected = {Area: "path", Line: "path", Window: "path", Circle: "circle", Words: "text"}
    assert tags == [expected[type(mark)] for mark in walk(picture.marks)]


def test_clip_outlines_have_names_of_their_own():
    windows = tuple(Window(box(0, 0, k, k), (Line([(0, 0), (k, k)]),)) for k in (1, 2, 3))
    body = svg_body(of(*windows), clip="panel-1")
    names = re.findall(r'clipPath id="([^"]+)"', body)
    assert len(set(names)) == 3 and all(name.startswith("panel-1-") for name in names)
    assert re.findall(r"url\(#([^)]+)\)", body) == names


@given(st.lists(st.tuples(st.floats(-999, 999), st.floats(-999, 999)), min_size=1, max_size=8), st.booleans())
def test_a_path_goes_through_its_points_to_a_tenth_of_a_px(points, closed):
    data = path_data(points, closed)
    numbers = [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", data)]
    assert numbers == pytest.approx(np.ravel(points).tolist(), abs=0.0501)
    assert data.startswith("M") and data.endswith("Z") == closed


def test_roles_become_classes_and_hidden_marks_say_so():
    role = pick(0.005, [0.004, 0.009], ["fine", "watch", "stop"])
    body = svg_body(
        of(Line([(0, 0), (1, 1)], role), Area(box(0, 0, 1, 1), "wood", shown=False), Words(0, 0, "x", "quiet"))
    )
    assert re.findall(r'class="([^"]+)"', body) == ["l l-watch", "a-wood off", "w-quiet"]


def test_numbers_follow_the_reader():
    picture = of(Words(1, 2, say("{w} wide", w=length(0.508))))
    said = {units: texts(drawn(picture, units=units)) for units in ("both", "inch", "metric")}
    assert said == {"both": ["20 in (508 mm) wide"], "inch": ["20 in wide"], "metric": ["508 mm wide"]}


def test_turned_words_turn_about_their_own_place():
    assert 'transform="rotate(-90 5 6)"' in svg_body(of(Words(5, 6, "up", turn=90.0)))


def test_the_style_can_be_left_to_the_page():
    assert drawn(of(), styled=False).find(NAMESPACE + "style") is None
    assert "--w-ink:" + ROLES["ink"].light in drawn(of()).find(NAMESPACE + "style").text


def test_a_picture_address_holds_the_whole_drawing():
    address = picture_address(of(Words(1, 2, "½ in — 5 mm")), "words")
    kind, _, data = address.partition(",")
    assert kind == "data:image/svg+xml;base64"
    assert texts(ElementTree.fromstring(b64decode(data).decode())) == ["½ in — 5 mm"]
