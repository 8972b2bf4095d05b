"""What stands on the page of a commission, in its order: the one list that the client's page and the notebook follow."""

from __future__ import annotations

from ..study.study import Study
from .card import Card, heading, joined, paragraphs
from .care import care_note
from .deciding import comparison_table, decision, how_they_compare
from .in_short import opening
from .judged import Commission
from .ready import stock_ready
from .reasons import why_it_moves
from .shop import shop_cards
from .sources import small_print
from .workshop import cautions, cut_list


def through_the_year(commission: Commission) -> Card:
    """What is to be seen in the picture of the piece."""
    return joined(
        heading("The piece through the year", 2),
        paragraphs(
            "Left is the driest month of the house, right the dampest. Above, one end of the piece seen from above; below, "
            "its joint in section. The first control changes the way it is built (the glued border, and the ways that suit "
            "this piece best), the others its width and the air of the house."
        ),
    )


def ways_to_slide(commission: Commission) -> Study:
    """The piece built this way or that, with sliders."""
    return commission.study()


def ways_side_by_side(commission: Commission) -> Study:
    """Every way that is compared, with sliders."""
    return commission.compared()


def living_with_it(commission: Commission) -> Card:
    """The care of the piece."""
    return joined(heading("Living with it"), care_note(commission))


def for_the_workshop(commission: Commission) -> Card:
    """Where the page turns from the client to the shop."""
    return joined(
        heading("For the workshop: what to cut today", 2, new_page=True),
        paragraphs(
            "From here on the page is for the shop. A client has read all there is to decide, and may stop here."
        ),
    )


def setting_out(commission: Commission) -> Card:
    """Parts, blanks, holes, order of cuts and drawings."""
    return joined(heading("Set out, to the last hole"), shop_cards(commission))


CONTENTS = (
    opening,
    through_the_year,
    ways_to_slide,
    why_it_moves,
    how_they_compare,
    ways_side_by_side,
    comparison_table,
    decision,
    living_with_it,
    for_the_workshop,
    stock_ready,
    cut_list,
    setting_out,
    cautions,
    small_print,
)
