"""Order of cuts: no step may need a face, an edge or a mark that is not there yet or is there no longer."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ..errors import InputError, Problems
from ..units import shown
from ..ways.steps import CROSSCUT, Step, read_faces

MOST_STEPS = 40
USUAL_PRESENT = ("rough face", "rough edge")


@dataclass(frozen=True)
class Missing:
    """A step that needs something which is not there; ``gone_by`` names the step that took it, if one did."""

    step: str
    face: str
    gone_by: str = ""

    @property
    def says(self) -> str:
        """The conflict in a sentence."""
        if self.gone_by:
            return f"{self.step} needs the {self.face}, which is gone after: {self.gone_by}."
        return f"{self.step} needs the {self.face}, which nothing before it has made."


@dataclass(frozen=True)
class CutOrder:
    """Steps in an order that works, with one reason for each pair that must not be swapped."""

    steps: tuple[Step, ...]
    reasons: tuple[str, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """The steps by name, first to last."""
        return tuple(step.name for step in self.steps)


def check_order(steps: Sequence[Step], present: Iterable[str] = USUAL_PRESENT) -> tuple[Missing, ...]:
    """What goes wrong when the steps are done in the order given; empty when nothing does.

    >>> bevel = Step("bevel the edge", removes=["square edge"])
    >>> bore = Step("bore for dowels", needs=["square edge"])
    >>> check_order([bevel, bore], present=["square edge"])[0].says
    'bore for dowels needs the square edge, which is gone after: bevel the edge.'
    """
    listed, there = _read_steps(steps, present)
    found: list[Missing] = []
    taken_by: dict[str, str] = {}
    for step in listed:
        found += [Missing(step.name, face, taken_by.get(face, "")) for face in sorted(step.needs - there)]
        taken_by.update(dict.fromkeys(step.removes & there, step.name))
        there = step.after(there)
    return tuple(found)


def cut_order(steps: Sequence[Step], present: Iterable[str] = USUAL_PRESENT) -> CutOrder:
    """An order in which every step finds what it needs, as near to the order given as can be.

    ``present`` what the stock has at the start. Raises :class:`InputError` with what stands in the way when there is
    no such order.

    >>> bevel = Step("bevel the edge", removes=["square edge"])
    >>> bore = Step("bore for dowels", needs=["square edge"])
    >>> order = cut_order([bevel, bore], present=["square edge"])
    >>> order.names
    ('bore for dowels', 'bevel the edge')
    >>> order.reasons
    ('bore for dowels before bevel the edge: it needs the square edge, which that takes away',)
    """
    listed, there = _read_steps(steps, present)
    ordered, stuck = _in_order(listed, there)
    if stuck:
        raise InputError(_no_order(listed, stuck, there))
    return CutOrder(tuple(ordered), tuple(_reasons(ordered, there)))


def _in_order(steps: list[Step], present: frozenset[str]) -> tuple[list[Step], list[Step]]:
    """The steps in order, and those that are stuck: always the first that finds what it needs and takes nothing away that
    another still waits for and nobody makes again; where there is none such, the first that finds what it needs.
    """
    ordered: list[Step] = []
    there, left = present, list(steps)
    while ready := [step for step in left if step.needs <= there]:
        spares = [step for step in ready if not step.removes & _needed(left, step) - _made(left, step)]
        step = (spares or ready)[0]
        ordered.append(step)
        there, left = step.after(there), [other for other in left if other is not step]
    return ordered, left


def _reasons(ordered: list[Step], present: frozenset[str]) -> Iterable[str]:
    for place, step in enumerate(ordered):
        for face in sorted(step.needs):
            maker = next((other for other in ordered[:place][::-1] if face in other.makes), None)
            if maker is not None:
                yield f"{maker.name} before {step.name}: it makes the {face}"
            taker = next((other for other in ordered[place + 1 :] if face in other.removes), None)
            if taker is not None:
                yield f"{step.name} before {taker.name}: it needs the {face}, which that takes away"


def _no_order(steps: list[Step], stuck: list[Step], present: frozenset[str]) -> str:
    """Why there is no order: what nothing makes, or else what the stuck steps wait for."""
    made = present.union(*(step.makes for step in steps))
    for step in steps:
        if never := step.needs - made:
            return (
                f"no order works: {step.name} needs the {min(never)}, which no step makes; add the step that makes it."
            )
    wanted = frozenset().union(*(step.needs for step in stuck))
    waiting = "; ".join(
        f"{step.name} needs the {_listed(step.needs)} and takes the {_listed(step.removes)}"
        for step in steps
        if step in stuck or step.removes & wanted
    )
    return (
        f"no order works, as these stand in each other's way: {waiting}; leave a reference face on until the last of "
        "them is done."
    )


def _listed(faces: frozenset[str]) -> str:
    return ", ".join(sorted(faces)) or "nothing"


def _needed(steps: list[Step], but: Step) -> frozenset[str]:
    return frozenset().union(*(step.needs for step in steps if step is not but))


def _made(steps: list[Step], but: Step) -> frozenset[str]:
    """Faces that another step makes anew without needing them."""
    return frozenset().union(*(step.makes - step.needs for step in steps if step is not but))


def _read_steps(steps: object, present: object) -> tuple[list[Step], frozenset[str]]:
    problems = Problems()
    there = read_faces(problems, "present", present)
    listed = list(steps) if isinstance(steps, list | tuple) else []
    if not 1 <= len(listed) <= MOST_STEPS or not all(isinstance(step, Step) for step in listed):
        problems.add(f"steps is {shown(steps)}; give a list of 1 to {MOST_STEPS} of Step(name, needs, makes, removes).")
        listed = []
    names = [step.name for step in listed]
    if twice := {name for name in names if names.count(name) > 1}:
        problems.add(f"steps hold {shown(min(twice))} twice; give each its own name.")
    problems.raise_if_any()
    return listed, there


_FLATTEN = Step("flatten one face", ["rough lengths", "rough face"], ["flat face"], ["rough face"])
_JOINT = Step("joint one edge", ["flat face", "rough edge"], ["square edge of the boards"], ["rough edge"])
_ONE_BOARD = (
    CROSSCUT,
    Step("mark the show face", makes=["numbers"]),
    _FLATTEN,
    _JOINT,
    Step("plane to thickness", ["flat face"], ["parallel face", "level faces"]),
    Step("rip the panel to width", ["level faces", "square edge of the boards"], ["square edge"]),
)


def _glued_up(dowels: bool, sections: bool) -> tuple[Step, ...]:
    """From rough boards to a panel that is ripped to width."""
    bore = (Step("bore for dowels", ["numbers", "jointed edges"], ["dowel holes"]),) if dowels else ()
    return (
        CROSSCUT,
        Step("number the boards and mark the show face", makes=["numbers"]),
        _FLATTEN,
        _JOINT,
        Step(f"plane to thickness{', strips a little over' if sections else ''}", ["flat face"], ["parallel face"]),
        Step(
            "rip the strips and joint the sawn edges", ["square edge of the boards", "parallel face"], ["jointed edges"]
        ),
        *bore,
        *_to_a_panel(["jointed edges", *(["dowel holes"] if dowels else [])], sections),
        Step("rip the panel to width", ["level faces"], ["square edge"]),
    )


def _to_a_panel(needs: list[str], sections: bool) -> tuple[Step, ...]:
    """From strips to a level panel, at once or in sections that pass the thicknesser."""
    jointed = ["jointed edges", "square edge of the boards"]
    if not sections:
        return (
            Step("glue up", needs, ["panel"], jointed),
            Step("level and smooth the panel", ["panel"], ["level faces"], ["numbers"]),
        )
    return (
        Step("glue up each section", needs, ["sections"]),
        Step("pass every section through the thicknesser at one setting", ["sections"], ["thicknessed sections"]),
        Step("glue the sections together", ["thicknessed sections", "jointed edges"], ["panel"], jointed),
        Step("level the last joints by hand, and smooth the panel", ["panel"], ["level faces"], ["numbers"]),
    )


def usual_steps(
    end_pieces: bool = False,
    dowels: bool = True,
    edge_shape: bool = False,
    glued_up: bool = True,
    sections: bool = False,
) -> tuple[Step, ...]:
    """The steps of a panel, as needed by :func:`cut_order`, in the order they come to mind.

    ``end_pieces`` cut from the same blank; ``dowels`` or loose tongues in the glue lines; ``edge_shape`` a bevel,
    round or taper that takes the square edge away; ``glued_up`` from several boards, or from one; ``sections`` that pass the
    thicknesser before they are joined.

    >>> cut_order(usual_steps(end_pieces=True, edge_shape=True)).names[-3:]
    ('cut the panel to length', 'bore for hardware', 'shape the edges')
    """
    steps = [*(_glued_up(dowels, sections) if glued_up else _ONE_BOARD)]
    if end_pieces:
        steps += [
            Step("number the end pieces on the show face", ["level faces"], ["end numbers"]),
            Step("cut off the end pieces", ["square edge", "end numbers"], ["end pieces"]),
        ]
    steps += [
        Step("cut the panel to length", ["square edge", *(["end pieces"] if end_pieces else [])], ["square ends"]),
        Step("bore for hardware", ["square edge", "square ends"], ["hardware holes"]),
    ]
    if edge_shape:
        steps.append(Step("shape the edges", ["hardware holes"], ["shaped edges"], ["square edge"]))
    return tuple(steps)
