"""One way to build as a record: everything that is particular to it, and nothing that is not."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from .held import Held
from .piece import Allowances, Piece
from .rules import CutRule, NoteRule
from .steps import Step
from .travel import Quantities

if TYPE_CHECKING:
    from ..picture.scene import Mark
    from .drawn import Drawn
    from .given import Given
    from .made import MadePiece

NO_SOURCE = "common practice, no source"


@dataclass(frozen=True)
class Limit:
    """What stops a way that slides: none of its ``sizes``, by key, may pass ``most_m``.

    ``meaning`` says what happens then, with ``{limit}`` where the limit is to be written.
    """

    sizes: tuple[str, ...]
    most_m: float
    meaning: str
    source: str = NO_SOURCE


@dataclass(frozen=True)
class Opening:
    """The one opening of a way that a client sees: ``what`` it is and ``where``, and the keys of its sizes.

    ``today`` is empty where there is none on the day it is cut.
    """

    what: str
    where: str
    driest: str
    dampest: str
    today: str = ""

    @property
    def name(self) -> str:
        """What it is and where, for a sentence."""
        return f"{self.what} {self.where}"


@dataclass(frozen=True, kw_only=True)
class Way:
    """One way to build.

    What it is for: ``kinds`` of piece it serves; ``usual_for`` those for which the trade takes it first (common
    practice, no source); ``usual`` that it is compared when no kind is named; ``also`` other names it goes by.

    Numbers: ``numbers(travels, piece, allowances)`` returns its smooth numbers; ``cuts`` the sizes to cut today,
    ``states`` sizes as they will stand in a month, never negative; ``stopped_by`` what stops it from growing wider,
    where anything does; ``opens`` what opens and closes so that it is seen; ``hidden_below`` sizes, by key, that must stay below the number
    ``visible`` for the way to be safe.

    Work: ``make(given)`` makes its parts from exact sizes; ``order`` steps of its own, beside those of a panel;
    ``plan`` and ``joint`` draw it from above and in section.

    What holds: ``holds`` that it takes movement away; ``holds_width`` that the panel itself then keeps its width;
    ``held_by`` leads to how far it is stretched; ``holding(piece, allowances)`` its own share, where it is not that of
    an edge-glued border; ``opens_when_damp`` that growth pulls on the joint as shrinking does; ``reference`` that it is
    the border which every other way is compared with, glued across both ends and judged by stress as well.

    Words: ``name`` for a reader, ``short`` on a picture, ``built_as`` to follow "we build it as", ``plural`` that the
    name takes no article; ``part`` what moves; ``shows`` the drawing, from above and then the joint; ``main_cuts`` keys
    of the sizes that a slider shows, at most three; ``driest``, ``dampest`` finish the sentence on the month, with travels
    in braces, and ``driest_still``, ``dampest_still`` where nothing goes that way; ``reasons`` one per risk level, or
    one for all, with ``{held}``, ``{most}`` and ``{limit}`` for strains and keys of sizes in braces; ``steps`` in the
    shop; ``remarks`` always hold, ``notes`` hang on sizes; ``change`` what would
    turn the advice over; ``cautions`` where it can hurt,
    ``seat_cautions`` where it carries a person.

    For the client: ``means`` what it is, for somebody who never heard the name; ``expect`` what the seasons will show,
    with ``{month}`` the driest, ``{outside}`` and ``{room}``;
    ``watch`` where no line may open.

    What it is: ``keeps_border`` a border across the ends remains to be seen, ``all_round`` along the
    edges too; ``wants_border`` it is of no use where
    none is asked for; ``keeps_flat`` it keeps the panel flat by itself; ``solid`` solid wood through and through;
    ``on_a_base`` it needs a base to be held to; ``framed`` a loose panel in a solid frame, and ``profile`` how it lies
    in it (flat, flush or raised); ``still_outside`` hardly anything moves outside; ``mitred`` its corners are;
    ``fast_at`` the line where it holds the panel fast (front, middle or back; of what is on a base the brief says it);
    ``fitted`` a part alone, in an opening; ``boarded`` loose boards; ``round`` turned.
    """

    key: str
    name: str
    short: str
    built_as: str
    shows: str
    kinds: tuple[str, ...]
    numbers: Callable[[Quantities, Piece, Allowances], Quantities]
    make: Callable[[Given], MadePiece]
    plan: Callable[[Drawn], list[Mark]]
    joint: Callable[[Drawn], list[Mark]]
    driest: str
    dampest: str
    reasons: tuple[str, ...]
    steps: tuple[str, ...]
    change: str
    order: tuple[Step, ...] = ()
    driest_still: str = ""
    dampest_still: str = ""
    usual_for: tuple[str, ...] = ()
    usual: bool = False
    also: tuple[str, ...] = ()
    cuts: tuple[CutRule, ...] = ()
    states: tuple[CutRule, ...] = ()
    stopped_by: Limit | None = None
    opens: Opening | None = None
    means: str = ""
    hidden_below: tuple[str, ...] = ()
    holding: Callable[[Piece, Allowances], Held] | None = None
    held_by: str = "Stretched where it is held, at most"
    part: str = "panel"
    main_cuts: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    notes: tuple[NoteRule, ...] = ()
    cautions: tuple[str, ...] = ()
    seat_cautions: tuple[str, ...] = ()
    expect: str = ""
    watch: str = "inside the panel"
    holds: bool = False
    holds_width: bool = False
    opens_when_damp: bool = False
    reference: bool = False
    plural: bool = False
    keeps_border: bool = False
    all_round: bool = False
    wants_border: bool = False
    keeps_flat: bool = False
    solid: bool = True
    on_a_base: bool = False
    framed: bool = False
    profile: str = ""
    fast_at: str = ""
    still_outside: bool = False
    mitred: bool = False
    fitted: bool = False
    boarded: bool = False
    round: bool = False

    def __repr__(self) -> str:
        """The key tells a way apart: a study that holds one can be kept under a name that stays the same."""
        return f"Way({self.key!r})"

    @property
    def sizes(self) -> dict[str, CutRule]:
        """The rules of all sizes by key, to cut and as they will stand."""
        return {rule.key: rule for rule in (*self.cuts, *self.states)}

    @property
    def title(self) -> str:
        """The name at the start of a line."""
        return self.name[:1].upper() + self.name[1:]

    @property
    def with_article(self) -> str:
        """The name within a sentence."""
        return self.name if self.plural else f"a {self.name}"
