"""Colours by role: contrast after WCAG 2.2, hatches where a judgement hangs on them, a style for every role."""

import itertools
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.handout.page import part
from woodlib.picture.palette import ROLES, contrast, hatches, style_sheet

WORDS = ("ink", "quiet", "dry", "damp", "today", "glue", "fine", "watch", "stop")  # roles that words are written in
LINES = ("edge", "ghost", "metal", "late-wood")  # roles that only strokes are drawn in
JUDGEMENTS = ("fine", "watch", "stop")
colours = st.integers(0, 0xFFFFFF).map("#{:06x}".format)


def shades(role):
    return ((ROLES[role].light, "light"), (ROLES[role].dark, "dark"))


@given(colours, colours)
def test_contrast_is_symmetric_and_between_1_and_21(first, second):
    assert contrast(first, second) == contrast(second, first)
    assert 1.0 <= contrast(first, second) <= 21.0 + 1e-9


@pytest.mark.parametrize("role", WORDS)
@pytest.mark.parametrize("page", ["light", "dark"])
def test_words_can_be_read(role, page):
    assert contrast(getattr(ROLES[role], page), getattr(ROLES["paper"], page)) >= 4.5


@pytest.mark.parametrize("role", LINES)
@pytest.mark.parametrize("page", ["light", "dark"])
def test_lines_can_be_seen(role, page):
    assert contrast(getattr(ROLES[role], page), getattr(ROLES["paper"], page)) >= 3.0


@pytest.mark.parametrize("line", ["late-wood", "edge", "ink", "dry", "damp"])
@pytest.mark.parametrize("wood", ["wood", "wood-end"])
@pytest.mark.parametrize("page", ["light", "dark"])
def test_lines_on_wood_can_be_seen(line, wood, page):
    least = 3.0 if wood == "wood" or line in ("late-wood", "edge") else 2.5  # dry and damp lines cross faces, not ends
    assert contrast(getattr(ROLES[line], page), getattr(ROLES[wood], page)) >= least


def test_judgements_differ_without_their_hue():
    looks = {(ROLES[role].hatch, ROLES[role].hatch_turn if ROLES[role].hatch else 0) for role in JUDGEMENTS}
    assert len(looks) == len(JUDGEMENTS)
    for milder, graver in itertools.pairwise(JUDGEMENTS):  # a grey print goes darker with the gravity
        assert contrast(ROLES[graver].light, "#ffffff") >= 1.2 * contrast(ROLES[milder].light, "#ffffff")


def test_stress_goes_darker_step_by_step_when_pulled():
    pulled = [contrast(ROLES[role].light, "#ffffff") for role in ("at-rest", "pull-1", "pull-2", "pull-3", "pull-4")]
    assert all(graver > 1.15 * milder for milder, graver in itertools.pairwise(pulled))


def test_every_role_has_a_style_on_light_and_dark_pages_and_in_print():
    sheet = style_sheet()
    for name, role in ROLES.items():
        assert {f".a-{name}{{", f".l-{name}{{", f".w-{name}{{"} <= set(re.findall(r"\.[alw]-[\w-]+\{", sheet))
        assert f"--w-{name}:{role.light};" in sheet and f"--w-{name}:{role.dark};" in sheet
    printed = sheet.split("@media print", 1)[1]
    assert ROLES["ink"].light in printed.split("}}", 1)[0]
    assert sheet.count("{") == sheet.count("}")


def test_hatched_roles_have_a_pattern_and_use_it():
    drawn = set(re.findall(r'id="h-([\w-]+)"', hatches()))
    assert drawn == {name for name, role in ROLES.items() if role.hatch}
    assert all(f".a-{name}{{fill:url(#h-{name})" in style_sheet() for name in drawn)


def test_a_page_wears_the_colours_of_its_pictures():
    """Paper, writing and what can be pressed: one palette for page and picture, on light and dark screens."""
    light, dark = re.findall(r":root\{([^}]*)\}", part("page.css"))[:2]
    roles = {"page": "paper", "text": "ink", "soft": "quiet", "link": "damp", "press": "damp"}
    for page, shade in ((light, "light"), (dark, "dark")):
        worn = dict(re.findall(r"--(\w+):(#[0-9a-f]{6})", page))
        assert {name: worn[name] for name in roles} == {
            name: getattr(ROLES[role], shade) for name, role in roles.items()
        }
