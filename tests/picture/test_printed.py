"""Pictures through matplotlib: true to size, every mark as an artist with its place, colour, words and clip."""

import io

import numpy as np
import pytest
from matplotlib.colors import to_hex
from matplotlib.lines import Line2D
from matplotlib.patches import Circle as Disc
from matplotlib.patches import Polygon

from woodlib.picture.palette import ROLES
from woodlib.picture.printed import figure
from woodlib.picture.scene import Area, Circle, Line, Picture, Window, Words, box, walk
from woodlib.studies.panel_movement import panel_movement
from woodlib.words.decided import larger, pick
from woodlib.words.say import length, say


def artists(*marks, units="both"):
    sheet = figure(Picture("p", 480, 240, marks), units)
    axes = sheet.axes[0]
    return [
        artist
        for artist in axes.get_children()
        if artist in axes.lines or artist in axes.patches or artist in axes.texts
    ]


def test_a_figure_is_true_to_size_and_grows_downward():
    sheet = figure(Picture("p", 480, 240))
    assert sheet.get_size_inches().tolist() == [5.0, 2.5]  # 96 px an inch
    axes = sheet.axes[0]
    assert axes.get_xlim() == (0, 480) and axes.get_ylim() == (240, 0)


def test_a_line_keeps_its_points_colour_and_weight():
    (line,) = artists(Line([(1, 2), (larger(3.0, 4.0), 5)], "damp", 2.0, "6 4"))
    assert isinstance(line, Line2D) and line.get_xydata().tolist() == [[1, 2], [4, 5]]
    assert line.get_color() == ROLES["damp"].light and line.get_linewidth() == pytest.approx(1.5)  # 2 px in points
    assert line.is_dashed()


def test_an_area_and_a_disc_keep_their_place():
    area, disc = artists(Area(box(1, 2, 30, 40), "stop"), Circle(5, 6, 7, "metal", filled=True))
    assert isinstance(area, Polygon) and isinstance(disc, Disc)
    assert np.array(area.get_xy())[:4].tolist() == [[1, 2], [31, 2], [31, 42], [1, 42]]
    assert area.get_hatch() and to_hex(area.get_facecolor()) == ROLES["stop"].light
    assert (*disc.center, disc.radius) == (5, 6, 7) and to_hex(disc.get_facecolor()) == ROLES["metal"].light


@pytest.mark.parametrize("units, text", [("both", "3/16 in (5 mm)"), ("inch", "3/16 in"), ("metric", "5 mm")])
def test_words_follow_the_reader(units, text):
    (words,) = artists(Words(10, 20, say("{m}", m=length(0.0048)), "quiet", 16, "end", turn=30), units=units)
    assert words.get_text() == text and words.get_position() == (10, 20)
    assert (words.get_ha(), words.get_rotation(), words.get_fontsize()) == ("right", 30, 12)


def test_words_with_dollars_are_not_taken_for_formulas():
    (words,) = artists(Words(1, 2, "$5 a foot, 10% off_$"))
    assert words.get_text() == "$5 a foot, 10% off_$" and not words.get_parse_math()


def test_picked_roles_and_hidden_marks():
    line, hidden = artists(
        Line([(0, 0), (1, 1)], pick(2.0, [1.0], ["fine", "stop"])),
        Line([(0, 0), (1, 1)], shown=pick(0.0, [1.0], [False, True])),
    )
    assert line.get_color() == ROLES["stop"].light and line.get_visible() and not hidden.get_visible()


def test_marks_in_a_window_are_seen_only_inside_it():
    ring, free = artists(Window(box(10, 10, 50, 20), (Circle(30, 30, 60, "late-wood"),)), Line([(0, 0), (9, 9)]))
    outline, _ = ring.get_clip_path().get_transformed_path_and_affine()
    assert outline.vertices[:4].tolist() == [[10, 10], [60, 10], [60, 30], [10, 30]]
    assert free.get_clip_path() is None


def test_a_study_prints_mark_by_mark_as_png_and_pdf():
    picture = panel_movement.answer().picture
    sheet = figure(picture, dots_per_inch=60)
    drawn = [mark for mark in walk(picture.marks) if not isinstance(mark, Window)]
    axes = sheet.axes[0]
    assert len(axes.lines) + len(axes.patches) + len(axes.texts) == len(drawn)
    for kind, start in (("png", b"\x89PNG"), ("pdf", b"%PDF")):
        page = io.BytesIO()
        sheet.savefig(page, format=kind)
        assert page.getvalue().startswith(start) and len(page.getvalue()) > 5000
