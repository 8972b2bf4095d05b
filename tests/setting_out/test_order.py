"""Order of cuts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from woodlib.errors import InputError
from woodlib.setting_out.order import Step, check_order, cut_order, usual_steps

FACES = ["show face", "square edge", "far edge", "left end", "right end"]


def test_taper_and_dowels_by_hand():
    # A leg: boring rides on the square edge and the show face; the taper takes the square edge; rounding over takes the
    # show face; the mortise is marked from both. Only boring and mortise before taper and rounding will do.
    steps = [
        Step("taper the leg", ["show face"], ["tapered edge"], ["square edge"]),
        Step("round over", ["tapered edge"], [], ["show face"]),
        Step("bore for dowels", ["square edge", "show face"]),
        Step("cut the mortise", ["square edge", "show face"]),
    ]
    present = ["show face", "square edge"]
    order = cut_order(steps, present)
    assert order.names == ("bore for dowels", "cut the mortise", "taper the leg", "round over")
    wrong = check_order(steps, present)
    assert {missing.step for missing in wrong} == {"bore for dowels", "cut the mortise"}
    assert wrong[0].gone_by in ("taper the leg", "round over")


def test_end_pieces_are_numbered_before_they_are_cut_off():
    names = cut_order(usual_steps(end_pieces=True, edge_shape=True)).names
    assert names.index("number the end pieces on the show face") < names.index("cut off the end pieces")
    assert names.index("bore for dowels") < names.index("glue up") < names.index("cut off the end pieces")
    assert names.index("bore for hardware") < names.index("shape the edges")


def test_two_steps_that_take_each_others_face():
    first = Step("cut the left rebate", ["right edge"], removes=["left edge"])
    second = Step("cut the right rebate", ["left edge"], removes=["right edge"])
    with pytest.raises(InputError, match="stand in each other's way") as caught:
        cut_order([first, second], ["left edge", "right edge"])
    assert "cut the left rebate needs the right edge" in str(caught.value)


def test_a_face_that_is_made_again_may_be_taken_in_between():
    steps = [
        Step("bevel", ["edge"], removes=["edge"]),
        Step("glue on a block", makes=["edge"], needs=["face"]),
        Step("bore", ["edge"]),
    ]
    order = cut_order(steps, ["face", "edge"])
    assert check_order(order.steps, ["face", "edge"]) == ()


step_sets = st.lists(
    st.tuples(
        st.sets(st.sampled_from(FACES), max_size=2),
        st.sets(st.sampled_from(FACES), max_size=2),
        st.sets(st.sampled_from(FACES), max_size=2),
    ),
    min_size=1,
    max_size=6,
)


@given(step_sets, st.sets(st.sampled_from(FACES), min_size=2))
def test_an_order_found_works_and_none_means_none(triples, present):
    """Complete where what is taken away is never made again, as on a bench; elsewhere an order that is found still works."""
    from itertools import permutations

    steps = [Step(f"step {n}", needs, makes - removes, removes) for n, (needs, makes, removes) in enumerate(triples)]
    lasting = not set().union(*(step.removes for step in steps)) & set().union(*(step.makes for step in steps))
    works = any(not check_order(order, present) for order in permutations(steps))
    try:
        found = cut_order(steps, present)
    except InputError as refused:
        assert str(refused).startswith("no order works") and not (works and lasting)
    else:
        assert check_order(found.steps, present) == () and set(found.steps) == set(steps)


def test_a_tangle_is_told_in_a_sentence_at_once():
    tangle = [Step(f"step {n}", [f"edge {n ^ 1}"], removes=[f"edge {n}"]) for n in range(36)]
    free = [Step(f"free {n}") for n in range(4)]
    with pytest.raises(InputError, match="no order works"):
        cut_order([*free, *tangle], [f"edge {n}" for n in range(36)])
