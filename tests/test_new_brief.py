"""A brief by six questions: what is typed is understood or asked again, and what is written can be read and judged."""

import pytest

from woodlib.brief import KEYS, read_brief
from woodlib.brief.asking import QUESTIONS, ask
from woodlib.brief.keys import KINDS_OF_PIECE
from woodlib.brief.template import sizes_of, template_text, write_new
from woodlib.commission.checked import judged_brief
from woodlib.new_brief import new_brief
from woodlib.tables import rows


def asked(*typed: str) -> tuple[dict[str, str], list[str]]:
    """The answers for what is typed, and all that was told."""
    told: list[str] = []
    lines = iter(typed)
    return ask(lambda prompt: next(lines), told.append), told


def test_every_kind_of_piece_has_its_sizes_and_keys():
    assert {row["kind"] for row in rows("kinds.csv")} == set(KINDS_OF_PIECE)
    named = {key for row in rows("kinds.csv") for key in row["keys"].split("|") if key}
    assert named <= {key.path for key in KEYS}


@pytest.mark.parametrize("kind", KINDS_OF_PIECE)
@pytest.mark.parametrize("units", ["inches", "millimetres"])
def test_the_usual_answers_of_every_kind_are_a_brief_that_can_be_judged(tmp_path, kind, units):
    size = " x ".join(sizes_of(kind, units)[f"piece.{name}"] for name in ("width", "length", "thickness"))
    answers, _ = asked(kind, size, *[""] * 4)
    path = write_new(tmp_path / "b.toml", template_text(answers, only=True))
    brief = read_brief(path)
    assert (brief.piece.kind, brief.units) == (kind, units)
    assert brief.maker == brief.client == "" and not brief.hardware  # no place-holder reaches a client
    assert judged_brief(path).verdicts


@pytest.mark.parametrize("kind", KINDS_OF_PIECE)
def test_the_template_of_every_kind_can_be_judged(tmp_path, kind):
    new_brief(tmp_path / "b.toml", kind)
    assert judged_brief(tmp_path / "b.toml").brief.piece.kind == kind


def test_answers_are_taken_as_people_type_them():
    answers, told = asked("door", "610x1981x22 mm", "none", "Cherry, QUARTERSAWN", "Aberdeen, tight and new", "9%, may")
    assert answers["piece.width"] == "610 mm" and answers["units"] == "millimetres"
    assert "piece.border_width" not in answers and "piece.border_thickness" not in answers
    assert (answers["piece.rings"], answers["house.climate"], answers["house.kind"]) == (
        "quartersawn",
        "Aberdeen",
        "tight and new",
    )
    assert (answers["wood.moisture"], answers["wood.built_in"]) == ("9 %", "May")
    assert sum(line.startswith("\n") for line in told) == len(QUESTIONS) == len(told)  # nothing was refused


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        (["drawer", "1"], "several of these"),
        (["sofa", "1"], "not among them"),
        (["2", "20 by 44", ""], "write it like 20 x 44 x 7/8 in"),
        (["2", "20 x 44 x 7/8", ""], "with a unit"),
        (["2", "", "wide", ""], "border"),
        (["2", "", "", "walnt", ""], "black walnut"),
        (["2", "", "", "ash, sideways", ""], "is no cut"),
        (["2", "", "", "", "Atlantis", ""], "Atlantis"),
        (["2", "", "", "", "2 % 60 %", ""], "humidity in winter"),
        (["2", "", "", "", "25", ""], "two numbers"),
        (["2", "", "", "", "", "8", ""], "no month"),
        (["2", "", "", "", "", "800, May", ""], "moisture"),
    ],
)
def test_what_cannot_be_taken_is_asked_again_with_the_reason(typed, says):
    _, told = asked(*typed, *[""] * 5)
    assert any(says in line for line in told if not line.startswith("\n"))


def test_an_inch_mark_and_quotes_survive_the_file(tmp_path):
    answers, _ = asked("2", '20" x 44" x 7/8"', '2"', *[""] * 3)
    answers["title"] = 'Ann\'s "bench"'
    brief = read_brief(write_new(tmp_path / "b.toml", template_text(answers, only=True)))
    assert brief.piece.width_m == pytest.approx(0.508) and brief.title == 'Ann\'s "bench"'


def test_nothing_is_written_over_and_nothing_without_answers(tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("builtins.input", lambda prompt: "")
    new_brief(None, "")
    new_brief(None, "")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["seat-2.toml", "seat.toml"]

    def closed(prompt):
        raise EOFError

    monkeypatch.setattr("builtins.input", closed)
    with pytest.raises(Exception, match="no brief was written"):
        new_brief(None, "")
    assert len(list(tmp_path.iterdir())) == 2
