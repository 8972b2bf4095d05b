"""A small log beside a brief: meter readings while the stock rests, and what is measured in the piece after delivery.

Lines are appended and never rewritten. From the readings the kit works out anew how fast this very stack dries; a width
or a gap of the piece is held against what was foretold for its month.
"""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from ..air.year import MONTH_NAMES
from ..errors import InputError
from ..files import MEGABYTE, check_lines, check_size
from ..moisture.meter import METERED_C, metered_percent
from ..movement.board import Board
from ..movement.through_year import movement_through_year
from ..units import metres, number_in, shown
from ..words.say import Said, fine_length, say
from .card import Card, Figure, Words
from .judged import Commission
from .stack import Stack, stack_of
from .stack_drawing import drawn, in_words

_HEAD = ("date", "what", "value")
_AT_THE_EDGE, _RULER_M = 0.15, 0.0005  # share of half a range, and what a rule shows; common practice, no source
_HARDLY_M = 0.0002  # half of what 1/64 in is written from
_LONGEST_LINE = 1000


@dataclass(frozen=True)
class Note:
    """One line of the log: ``what`` is moisture (%), width or gap (m); ``text`` as it was written."""

    day: date
    what: str
    value: float
    text: str


def notes_path(brief: Path) -> Path:
    """Where the notes of a brief are: ``seat-notes.csv`` beside ``seat.toml``."""
    return brief.with_name(f"{brief.stem}-notes.csv")


def read_note(words: Sequence[str], today: date | None = None) -> Note:
    """A note from words: ``9.1% 2026-03-02``, ``9.1% at 50 degF``, ``width "507 mm"``, ``gap "3/16 in" 2026-08-01``.

    >>> read_note(["9.1%", "2026-03-02"]).value
    9.1
    >>> round(read_note(["9.1%", "at", "50", "degF", "2026-03-02"]).value, 1)
    9.9
    """
    left = [word.strip() for word in words if word.strip()]
    try:
        day = date.fromisoformat(left[-1]) if left and left[-1].count("-") == 2 else None
    except ValueError:
        raise InputError(f"the day is {shown(left[-1])}; write it like 2026-03-02.") from None
    text = " ".join(left[:-1] if day else left)
    day = day or today or date.today()
    text, _, warm = text.partition(" at ")
    what, _, size = text.partition(" ")
    if what in ("width", "gap") and not warm:
        limit = 5.0 if what == "width" else 0.2
        return Note(day, what, metres(size, name=what, minimum_m=0.0, maximum_m=limit), size)
    try:
        moisture = number_in(
            text, "percent", name="note", default_unit="percent", minimum=1.0, maximum=60.0, share="mc"
        )
        if warm:
            wood_c = number_in(
                warm, "degC", name="temperature of the wood", minimum=METERED_C.low, maximum=METERED_C.high
            )
            return Note(day, "moisture", float(metered_percent(moisture, wood_c)), f"{text} at {warm}")
    except InputError:
        raise InputError(
            f"the note is {shown(text)}; write a meter reading of 1 to 60 % such as 9.1%, in cold or warm wood 9.1% at 50 degF, "
            'or width "507 mm", or gap "3/16 in" (all gaps across the grain together), and then the day: 2026-03-02.'
        ) from None
    return Note(day, "moisture", moisture, text)


def add_note(brief: Path, note: Note) -> Path:
    """Append a note to the log of a brief; nothing that stands there is touched."""
    path = notes_path(brief)
    read_notes(brief)  # what cannot be read is told before anything is added
    try:
        with open(path, "a", encoding="utf-8", newline="") as file:
            lines = csv.writer(file, lineterminator="\n")
            lines.writerows([_HEAD] if file.tell() == 0 else [])
            lines.writerow((note.day.isoformat(), note.what, note.text))
    except OSError as error:
        raise InputError(f"{path.name} cannot be written ({error.strerror}); choose a folder that lets you.") from None
    return path


def read_notes(brief: Path) -> tuple[Note, ...]:
    """The notes of a brief by their days; none without a log. Raises :class:`InputError` with the line that cannot be read."""
    path, found = notes_path(brief), []
    if not path.is_file():
        return ()
    check_size(path, "log", MEGABYTE)
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError):
        raise InputError(f"{path.name} cannot be read as text in UTF-8; save it so.") from None
    check_lines(text, path.name, _LONGEST_LINE)
    for number, row in enumerate(csv.reader(text.splitlines()), 1):
        if not row or tuple(row) == _HEAD:
            continue
        try:
            day, what, value = row
            found.append(read_note([*([] if what == "moisture" else [what]), value, day]))
        except (InputError, ValueError) as error:
            why = error if isinstance(error, InputError) else f"it has {len(row)} cells; a line has date, what, value."
            raise InputError(f"{path.name}, line {number}: {why}") from None
    return tuple(sorted(found, key=lambda note: note.day))


def note_lines(commission: Commission) -> Iterator[Words]:
    """What the notes beside a brief say, one sentence or two for each kind."""
    notes = read_notes(commission.brief.path)
    readings = [note for note in notes if note.what == "moisture"]
    if readings:
        yield _stack(commission, readings).words
    yield from piece_lines(commission, notes)


def piece_lines(commission: Commission, notes: Sequence[Note] | None = None) -> Iterator[Words]:
    """What was measured in the piece itself says: whether it moves as foretold; nothing without a width or a gap."""
    notes = read_notes(commission.brief.path) if notes is None else notes
    for what in ("width", "gap"):
        measured = [note for note in notes if note.what == what]
        if measured:
            yield _as_foretold(commission, what, measured)


def drawn_stack(commission: Commission) -> Card:
    """The meter readings beside a brief drawn on the resting curve of its stack; nothing without them."""
    readings = [note for note in read_notes(commission.brief.path) if note.what == "moisture"]
    stack = _stack(commission, readings) if readings else None
    picture = drawn(stack) if stack else None
    return Card((Figure(picture, in_words(stack)),)) if stack and picture else Card()


def _stack(commission: Commission, readings: list[Note]) -> Stack:
    return stack_of(commission, [(note.day, note.value) for note in readings])


def _as_foretold(commission: Commission, what: str, notes: list[Note]) -> Said:
    """The last measure against the first, or a width against the one in the brief, beside what was foretold."""
    piece, months, doubts = commission.piece, commission.months, commission.doubts
    last, names = notes[-1], list(months.names)
    lead = say(f"The {what} of {{size}} on {last.day}", size=fine_length(last.value))
    to = MONTH_NAMES[last.day.month - 1]
    if len(notes) > 1:
        begin, since, moist = notes[0].value, f"since {notes[0].day}", MONTH_NAMES[notes[0].day.month - 1]
        if moist not in names or to not in names:
            return say("{lead}: the air of its month is not known, so nothing was foretold for it.", lead=lead)
        start = float(months.mc_percent[names.index(moist)])
        doubts = replace(doubts, meter_percent=doubts.air_percent)
    elif what == "width" and to in names:
        begin, since, start = piece.width_m, "since it was glued up", commission.brief.stock.moisture_percent()
    else:
        return say("{lead} is where the next one will be counted from.", lead=lead)
    board = Board(piece.species, piece.width_m, piece.thickness_m, piece.length_m, piece.ring_angle_deg)
    foretold = movement_through_year(board, start, months, doubts).movements[names.index(to)]
    moved = (last.value - begin) * (1.0 if what == "width" else -1.0)
    side = foretold.high_m - foretold.mid_m if moved > foretold.mid_m else foretold.mid_m - foretold.low_m
    beyond = abs(moved - foretold.mid_m) - side
    edge = max(_AT_THE_EDGE * side, _RULER_M)
    means = "outside", "the wood, the cut or the air of the room is not what the brief says: lay a hygrometer there"
    if beyond <= -edge:
        means = "inside", "it moves as it should, and nothing is to be done"
    elif beyond <= edge:
        means = "at the edge of", "watch it, and measure again in the opposite season"
    return say(
        f"{{lead}}: across the grain the wood went {{moved}} {since}; foretold was {{foretold}}. That is {means[0]} what was "
        f"foretold: {means[1]}.",
        lead=lead,
        moved=_went(moved),
        foretold=say(
            "{mid}, could be {low} to {high}",
            **{end: _went(getattr(foretold, f"{end}_m")) for end in ("mid", "low", "high")},
        ),
    )


def _went(moved_m: float) -> Said:
    """How far and which way."""
    if abs(moved_m) < _HARDLY_M:
        return say("hardly anything")
    return say(f"{{size}} {'wider' if moved_m > 0.0 else 'narrower'}", size=fine_length(abs(moved_m)))
