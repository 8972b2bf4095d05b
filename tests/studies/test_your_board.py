"""A board against its kind: the same numbers as a brief's test piece, narrower the better it was measured."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.handout.record import record
from woodlib.handout.replay import freeze_checked
from woodlib.movement.measured_piece import MeasuredPiece, learn
from woodlib.studies import find_study
from woodlib.studies.your_board import _COUNT, _WITHIN, FIRST_PERCENT, PIECE_M, WOODS
from woodlib.words.say import plain_text

STUDY = find_study("your-board")
STATES = st.fixed_dictionaries(
    {
        "species": st.sampled_from(WOODS),
        "drop": st.floats(2.5, 5.0),
        "shrank": st.floats(2e-4, 3e-3),
        "how": st.sampled_from(list(_WITHIN)),
        "pieces": st.sampled_from(list(_COUNT)),
    }
)


@given(STATES)
def test_the_study_says_what_a_brief_would_learn(state):
    piece = MeasuredPiece(
        PIECE_M,
        PIECE_M - state["shrank"],
        FIRST_PERCENT,
        FIRST_PERCENT - state["drop"],
        moisture_percent=_WITHIN[state["how"]],
    )
    answer = STUDY.answer(**state)
    try:
        learned = learn(state["species"], [piece] * _COUNT[state["pieces"]])
    except InputError as error:
        assert "no board of it does" in str(error) and answer.readings[1].tone.chosen == "stop"
        assert plain_text(answer.headline).startswith("No ")
        return
    low, high = (learned.factor + side * 1.645 * learned.factor_sd for side in (-1.0, 1.0))
    said = f"about {100 * learned.factor:.0f} %, could be {100 * low:.0f} % to {100 * high:.0f} %"
    numbers = [float(word) for word in said.replace("%", "").split() if word.isdigit()]
    shown = [float(word) for word in plain_text(answer.readings[2].value).replace("%", "").split() if word.isdigit()]
    assert shown == pytest.approx(numbers, abs=1.01)


def test_the_start_by_hand():
    """White oak, 0.00365 per point: 101.6 mm by 4 points 1.483 mm; 1.1 mm is 0.742.

    Calipers 0.2 mm: 0.1216 x 1.414 = 0.172 of 1.483: 0.116; moistures 0.2: 0.1216 points twice, 0.172 of 4: 0.043; rings next
    to nothing; within the board 0.05: variance 0.0135 + 0.0018 + 0.0025 = 0.0178. With 0.0225 of the kind: (44.4 +
    0.742 x 56.2) / 100.6 = 0.856; sd 0.0997.
    """
    said = plain_text(STUDY.answer().readings[2].value)
    assert said == "about 86 %, could be 69 % to 102 %"


@pytest.mark.parametrize(
    ("more", "narrower"), [({"how": "scale"}, {"how": "meter"}), ({"pieces": "three"}, {"pieces": "one"})]
)
def test_better_measuring_narrows(more, narrower):
    spans = []
    for state in (more, narrower):
        numbers = plain_text(STUDY.answer(**state).readings[2].value).replace("%", "").split()
        low, high = (float(word) for word in numbers[-3::2])
        spans.append(high - low)
    assert spans[0] < spans[1]


def test_every_corner_is_finite_and_told_with_its_numbers():
    for corner in STUDY.corners():
        answer = STUDY.answer(**corner)
        assert all(abs(leaf) < 2e4 for leaf in record(answer).leaves.ravel())
        assert plain_text(answer.readings[2].value) in answer.alt_text()


def test_it_can_be_frozen():
    checked = freeze_checked(STUDY)
    assert checked.worst_px < 0.5 and checked.texts > 500
