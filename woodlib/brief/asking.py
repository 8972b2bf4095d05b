"""Six questions in a terminal, each with a usual answer and a picture in words, and from their answers a brief."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from ..air.climates import find_climate
from ..air.rooms import find_kind
from ..errors import InputError
from ..species import find_species
from ..tables import rows
from ..units import metres, number_in, shown
from .keys import MONTHS, RING_ANGLES_DEG
from .template import sizes_of

Answers = dict[str, str]
_ROOMS = ("68 degF", "75 degF")


@dataclass(frozen=True)
class Question:
    """One question: ``asks`` it, ``pictures`` what the answers mean, ``usual`` is taken for an empty answer.

    ``usual`` and ``read`` see the answers so far, by key of the brief; ``read`` adds to them or refuses in a sentence.
    """

    asks: str
    pictures: Callable[[], str]
    usual: Callable[[Answers], str]
    read: Callable[[str, Answers], Answers]
    put: Callable[[Answers], bool] = lambda answers: True


def ask(answer: Callable[[str], str], tell: Callable[[str], None]) -> Answers:
    """The answers by key of the brief; a refused answer is asked again, with the sentence that says why.

    ``answer`` shows a prompt and returns what is typed, ``tell`` shows a line.
    """
    answers: Answers = {}
    for question in QUESTIONS:
        if not question.put(answers):
            continue
        tell(f"\n{question.asks}\n  {question.pictures()}")
        usual = question.usual(answers)
        while True:
            try:
                answers |= question.read(answer(f"[{usual}] ").strip() or usual, answers)
                break
            except InputError as error:
                tell(str(error))
    return answers


def _kind(text: str, answers: Answers) -> Answers:
    names = [row["kind"] for row in rows("kinds.csv")]
    if text.isdecimal() and 1 <= int(text) <= len(names):
        return sizes_of(names[int(text) - 1])
    found = [name for name in names if name.startswith(text.casefold())] or [
        name for name in names if text.casefold() in name
    ]
    if len(found) != 1:
        raise InputError(
            f"{shown(text)} is {'several of these' if found else 'not among them'}; type its number or its name."
        )
    return sizes_of(found[0])


def _usual_size(answers: Answers) -> str:
    width, length, thickness = (answers[f"piece.{name}"] for name in ("width", "length", "thickness"))
    return f"{width.removesuffix(' in')} x {length.removesuffix(' in')} x {thickness}"


def _size(text: str, answers: Answers) -> Answers:
    parts = [part.strip() for part in re.split(r"\s+x\s+|\s*[×*]\s*|(?<=[\d\"m])x(?=\d)", text) if part.strip()]
    unit = re.search(r"(mm|cm|inches|inch|in|\"|ft|m)\s*$", parts[-1]) if parts else None
    if len(parts) != 3 or unit is None:
        raise InputError(
            f"{shown(text)} is not width x length x thickness with a unit; write it like 20 x 44 x 7/8 in."
        )
    sizes = [part if re.search(r"[a-z\"']\s*$", part) else f"{part} {unit[1]}" for part in parts]
    for name, size in zip(("width", "length", "thickness"), sizes, strict=True):
        metres(size, name=name, positive=True)
    units = "millimetres" if unit[1] in ("mm", "cm", "m") else "inches"
    usual = sizes_of(answers["piece.kind"], units)
    found = dict(zip(("piece.width", "piece.length", "piece.thickness"), sizes, strict=True))
    return usual | found | ({"piece.border_thickness": sizes[2]} if "piece.border_width" in usual else {})


def _border(text: str, answers: Answers) -> Answers:
    if text.casefold() in ("none", "no", "0", "without"):
        answers.pop("piece.border_width")
        answers.pop("piece.border_thickness")
        return {}
    metres(text, name="border", positive=True)
    return {"piece.border_width": text}


def _wood(text: str, answers: Answers) -> Answers:
    name, _, cut = (part.strip() for part in text.rpartition(",")) if "," in text else (text, "", "flatsawn")
    if cut.casefold() not in RING_ANGLES_DEG:
        raise InputError(f"{shown(cut)} is no cut; write {', '.join(RING_ANGLES_DEG)} behind the wood and a comma.")
    find_species(name)
    return {"wood.species": name, "piece.rings": cut.casefold()}


def _house(text: str, answers: Answers) -> Answers:
    numbers = re.findall(r"\d+(?:[.,]\d+)?", text)
    if not numbers:
        place, _, kind = (part.strip() for part in text.partition(","))
        find_climate(place)
        return {"house.climate": place} | ({"house.kind": kind} if kind and find_kind(kind) else {})
    if len(numbers) != 2:
        raise InputError(f"{shown(text)} is not two numbers; write humidity in winter, then in summer: 25 % 60 %.")
    found: Answers = {}
    for season, humidity, degrees in zip(("winter", "summer"), numbers, _ROOMS, strict=True):
        share = number_in(
            humidity, "percent", name=f"humidity in {season}", default_unit="percent", minimum=5, maximum=95
        )
        found |= {f"house.seasons.{season}.humidity": f"{share:g} %", f"house.seasons.{season}.temperature": degrees}
    return found


def _stock(text: str, answers: Answers) -> Answers:
    moisture, _, month = (part.strip() for part in text.partition(","))
    share = number_in(moisture, "percent", name="moisture", default_unit="percent", minimum=3, maximum=30)
    found = [name for name in MONTHS if month and name.casefold().startswith(month.casefold())]
    if len(found) != 1:
        raise InputError(f"{shown(month)} is no month; write moisture and month like 8 %, October.")
    return {"wood.moisture": f"{share:g} %", "wood.built_in": found[0]}


def _kinds() -> str:
    return "\n  ".join(f"{place:2}  {row['kind']}: {row['what']}" for place, row in enumerate(rows("kinds.csv"), 1))


QUESTIONS = (
    Question("1 of 6. What is it? Its number or its name.", _kinds, lambda answers: "seat", _kind),
    Question(
        "2 of 6. How large is it, finished: width x length x thickness? Its grain runs along the length.",
        lambda: "The width is across the grain: the way it moves. Inches or millimetres, as you work.",
        _usual_size,
        _size,
    ),
    Question(
        "3 of 6. How wide is the border that the client has in mind, or none?",
        lambda: "A border is a strip round the edge or across both ends, over the end grain.",
        lambda answers: answers["piece.border_width"],
        _border,
        lambda answers: "piece.border_width" in answers,
    ),
    Question(
        "4 of 6. Which wood, and how is it cut?",
        lambda: (
            "flatsawn: tall arches on the face. quartersawn: straight lines, in oak with flecks. riftsawn: between them."
        ),
        lambda answers: "white oak, flatsawn",
        _wood,
    ),
    Question(
        "5 of 6. How damp is the air where it will live: in winter, then in summer? Or a place: Aberdeen, open windows in summer",
        lambda: (
            "25 %: sparks from the carpet, dry lips. 40 %: nobody speaks of it. 60 %: salt clumps. 70 %: drawers stick."
        ),
        lambda answers: "25 % 60 %",
        _house,
    ),
    Question(
        "6 of 6. How moist is the wood today, by meter, and in which month is it glued up?",
        lambda: "6 %: from a heated shop in winter. 8 %: usual. 12 %: from a shed. Over 15 %: not yet for furniture.",
        lambda answers: "8 %, October",
        _stock,
    ),
)
