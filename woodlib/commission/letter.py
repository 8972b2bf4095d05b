"""The commission told to a client: what is built and why, how it moves, how to live with it, what it rests on."""

from __future__ import annotations

from ..brief import Hardware
from ..movement.spread import Movement
from ..restraint.measures import STATUS_WORDS, known_sentences, odds_words
from ..studies.ways_bench import State
from ..studies.ways_words import month_words, reason
from ..units import both, length_range, write
from ..ways.verdict import Verdict
from ..words.say import humidity, movement
from .card import Card, Paragraph, folded, heading, joined, judged, listed, paragraphs, table, told
from .margin import safe_humidity_percent
from .names import finish_of
from .road import Commission
from .shop import setting_out_of

_TONES = ("fine", "watch", "stop")


def opening(commission: Commission) -> Card:
    """Title, the people, the answer in short, and the brief as it was agreed."""
    brief = commission.brief
    people = " ".join(
        part
        for part in (f"For {brief.client}." if brief.client else "", f"From {brief.maker}." if brief.maker else "")
        if part
    )
    settings = {"title": brief.title, "units": {"inches": "both", "millimetres": "metric"}[brief.units]}
    return joined(
        heading(brief.title, 1), paragraphs(people, _in_short(commission)), _facts(commission), settings=settings
    )


def _in_short(commission: Commission) -> str:
    """What is built, what glue would do, how far the wood goes, and what is left for the client to do."""
    said = (part(commission) for part in (_built_as, _if_glued, _goes, _to_do))
    return " ".join(sentence for sentence in said if sentence)


def _built_as(commission: Commission) -> str:
    built, advised = commission.built, commission.advised
    if built.allowed:
        return f"We build it as {built.way.built_as}."
    instead = f" and would build {advised.way.built_as} instead" if advised.allowed else ""
    return f"It is asked for as {built.way.built_as}; we advise against that{instead}."


def _if_glued(commission: Commission) -> str:
    """What the border would do if it were glued across the ends, by its verdict; nothing where that is not compared."""
    glued = next((verdict for verdict in commission.verdicts if verdict.way.reference), None)
    if glued is None or glued.allowed:
        return ""
    chance = glued.panel.chance.sound.likely if glued.panel is not None and glued.panel.chance else None
    if chance is not None:
        return f"Glued across the ends, a border may well crack it: the chance in the first years is about {odds_words(chance)}."
    if glued.level == 2:
        return "Glued across the ends, a border could crack it within a few winters."
    return "Glued across the ends, a border may crack it over the years."


def _goes(commission: Commission) -> str:
    brief, first = commission.brief, commission.first
    size = about(commission.whole_moves.mid_m, first)
    wide = both(brief.piece.width_m, first=first)
    whole = f"In your house {wide} of {brief.stock.species} grows and shrinks by {size} over the year."
    if not commission.built.way.framed:
        return whole
    outside = about(outside_m(commission), first)
    return f"{whole} Built this way the {brief.piece.kind} itself changes by {outside}; the rest happens inside it."


def _to_do(commission: Commission) -> str:
    driest, dampest = (text.removesuffix(" % RH") for text in airs_of(commission))
    low, high = safe_humidity_percent(commission)
    short = (
        ""
        if (low, high) == (int(driest), int(dampest))
        else (f" Short spells outside that do no harm; call us if it stays below {low} or above {high} % for a month.")
    )
    return (
        f"What you do: it is made for your house as it is, from {driest} to {dampest} % relative humidity (a small "
        f"hygrometer shows it); keep it so, and the piece away from heaters.{short}"
    )


def outside_m(commission: Commission) -> float:
    """How far a frame goes outside over the year, likely: its two members across are solid wood."""
    piece = commission.piece
    return float(commission.whole_moves.times(2.0 * piece.border_width_m / piece.width_m).mid_m)


_TINY_M = 0.0004


def about(metres: float, first: str) -> str:
    """A likely size; what is too small to be seen is said to be so."""
    return "less than 1/64 in (0.4 mm)" if abs(metres) < _TINY_M else f"about {told(movement(metres), first)}"


def _range(moves: Movement, first: str) -> str:
    if moves.low_m < 0.0:  # a year that hardly swings: only the doubts are left
        return f"{about(moves.mid_m, first)}, at most by {both(moves.high_m, 32, 0.5, 'up', first)}"
    return moves.text(first).replace(", could be ", "; it could be ", 1)


def _facts(commission: Commission) -> Card:
    brief, first = commission.brief, commission.first
    piece = brief.piece
    size = (
        f"{both(piece.width_m, first=first)} across the grain, {both(piece.length_m, first=first)} along it, "
        f"{both(piece.thickness_m, first=first)} thick, finished outside"
    )
    border = "none asked for"
    if piece.border_width_m:
        border = f"{both(piece.border_width_m, first=first)} wide, within that size"
    stock = write(brief.stock.moisture_percent(), "moisture")
    rows = [
        ("Piece", f"{piece.kind}, {size}"),
        ("Border", border),
        (
            "Wood",
            f"{brief.stock.species}, {_rings(piece.ring_angle_deg)}, at {stock} today (MC: the water in the wood, in "
            "percent of its dry weight)",
        ),
        ("Finish", finish_of(brief).label),
        ("Your house", _house(commission)),
        *_hardware_rows(commission),
        *((("What you asked for", " ".join(brief.notes.split())),) if brief.notes.strip() else ()),
    ]
    return table(("What", "As ordered"), rows, "The brief")


def _rings(angle_deg: float) -> str:
    named = {0.0: "flatsawn", 45.0: "riftsawn", 90.0: "quartersawn"}
    return named.get(angle_deg, f"rings at {write(angle_deg, 'angle')} to the face")


def _house(commission: Commission) -> str:
    driest, dampest = airs_of(commission)
    names = commission.bench.months
    return (
        f"driest in {names[0]} at {driest}, dampest in {names[1]} at {dampest} (RH: the relative humidity of the air, "
        "which a hygrometer shows)"
    )


def airs_of(commission: Commission) -> tuple[str, str]:
    """The humidity of the driest and of the dampest month, in words."""
    travels = commission.bench.travels
    return tuple(told(humidity(airs.rh_percent)) for airs in (travels.driest, travels.dampest))


def _hardware_rows(commission: Commission) -> list[tuple[str, str]]:
    """Each piece of hardware; what sits in a part whose grain runs with it does not notice the year."""
    items = commission.brief.hardware
    placed = setting_out_of(commission).hardware if items else ()
    return [
        (f"Hardware: {item.name}", _hardware(item, commission, place.slots is not None))
        for item, place in zip(items, placed, strict=True)
    ]


def _hardware(item: Hardware, commission: Commission, spans: bool) -> str:
    centres = both(item.centres_m, 64, 0.5, first=commission.first)
    if not spans and item.runs == "across the grain":
        return f"screws {centres} apart, in a part whose own grain runs that way: a distance that hardly changes"
    if item.runs == "along the grain":
        return f"screws {centres} apart along the grain, a distance that hardly changes"
    share = item.centres_m / commission.built.quantities["width"]
    most = both(share * commission.built.moves.high_m, 64, 0.1, "up", commission.first)
    return f"screws {centres} apart across the grain, a distance that changes by up to {most}: one hole becomes a slot"


def why_it_moves(commission: Commission) -> Card:
    """The reason in numbers of this piece: air, moisture in the wood, width; and along the grain for comparison."""
    first, built, bench = commission.first, commission.built, commission.bench
    numbers = built.quantities
    driest, dampest = airs_of(commission)
    along = commission.piece.wood.axis_strains(numbers["driest_mc"], numbers["dampest_mc"])[0]
    longer = abs(float(along)) * commission.piece.length_m
    return paragraphs(
        f"Air of {driest}, as in {bench.months[0]}, "
        f"draws the wood of this piece down to {write(numbers['driest_mc'], 'moisture')}; "
        f"air of {dampest}, as in {bench.months[1]}, brings it up to {write(numbers['dampest_mc'], 'moisture')}. "
        f"Today it stands at {write(numbers['stock_mc'], 'moisture')}.",
        f"Between those two the {_moving(commission)}, {both(numbers['width'], first=first)} wide, "
        f"{_changes(built)} by {_range(built.moves, first)}. Its length, along the grain, "
        f"changes by {length_range(longer, longer, longer, first)}. The range is there because no two boards are "
        "alike; it holds nine times in ten.",
    )


def _moving(commission: Commission) -> str:
    return "loose panel" if "opening" in commission.built.quantities else commission.built.way.part


def _changes(built: Verdict) -> str:
    return "would change its width, if it were free," if built.way.holds_width else "changes its width"


def comparison_table(commission: Commission) -> Card:
    """Every way that is compared, most suitable first, with what the two months do to it."""
    rows = [
        (
            verdict.way.name + (_chosen(verdict) if verdict is commission.built else ""),
            _month(commission, verdict, "narrowing"),
            _month(commission, verdict, "widening"),
            _judged(commission, verdict),
        )
        for verdict in commission.verdicts
    ]
    months = commission.bench.months
    head = ("Way to build", f"Driest month ({months[0]})", f"Dampest month ({months[1]})", "Verdict")
    compared = table(head, rows, "The usual ways to build this piece, most suitable first")
    glued = _glued(commission)
    said = paragraphs(f"Glued across the ends, judged in two ways. {' '.join(glued.measures)}" if glued else "")
    return joined(folded("What the driest and the dampest month do to each", compared), said)


def _glued(commission: Commission) -> Verdict | None:
    """The verdict on the glued border, where it is compared and the stress model could judge it."""
    found = (verdict for verdict in commission.verdicts if verdict.way.reference and verdict.panel)
    return next(found, None)


def _chosen(verdict: Verdict) -> str:
    return " (ours)" if verdict.allowed else " (asked for)"


def state_of(commission: Commission, verdict: Verdict) -> State:
    """A way to build at the air of the brief, as sliders have it."""
    bench = commission.bench
    travels = bench.travels
    return bench.state(verdict.key, commission.piece.width_m, travels.driest.rh_percent, travels.dampest.rh_percent)


def _month(commission: Commission, verdict: Verdict, way: str) -> str:
    words = told(month_words(state_of(commission, verdict), way), commission.first)
    return words[:1].upper() + words[1:] + "."


def _judged(commission: Commission, verdict: Verdict) -> str:
    if verdict.restrained_strain.high > 0.0:
        held = f"stretched by up to {write(verdict.restrained_strain.high, 'strain')}"
    else:
        held = "nothing is forced"
    wanted = commission.brief.piece.border_width_m
    border = ("; border kept" if verdict.way.keeps_border else "; no border across the ends") if wanted else ""
    return f"{verdict.risk}: {held}{border}"


def decision(commission: Commission) -> Card:
    """What is built, why, and what would change the decision."""
    built, advised = commission.built, commission.advised
    because = told(reason(state_of(commission, built)), commission.first)
    name = built.way.with_article
    if built.allowed:
        lead = f"We build it as {name}. {because}"
        other = (
            ""
            if built is advised
            else f"The kit would put {advised.way.with_article} first; both come through this house unharmed."
        )
    elif advised.allowed:
        lead = f"Decided so far: {name}. We advise against it. {because}"
        other = (
            f"Our advice: {advised.way.with_article}. {told(reason(state_of(commission, advised)), commission.first)}"
        )
    else:
        lead = f"None of the ways compared comes through this house unharmed; {name} is the least risky. {because}"
        other = "Ask for a way that lets the panel slide: a frame with a floating panel, or a breadboard end on slots."
    remarks = [
        text[:1].upper() + text[1:] + "."
        for text in built.remarks
        if text not in commission.piece.wood.remarks + commission.months.remarks
    ]
    # What would turn the advice over, and what would speak for another way that is as safe.
    changes = dict.fromkeys((commission.would_change, built.way.change if built.allowed else ""))
    said = paragraphs(other, " ".join(filter(None, changes)), *remarks)
    return judged(_TONES[built.level], joined(Card((Paragraph("", lead),)), said))


def small_print(commission: Commission) -> Card:
    """What the numbers rest on, what was assumed, and their limits."""
    sources = (
        "Moisture of wood in air: Wood Handbook FPL-GTR-190 (2010), eq. 4-5. Movement: the same, eq. 13-2, and total "
        "shrinkage outside 6 to 14 % MC.",
        "When held wood takes a set (0.40 %) and starts to fail (0.90 %): The Structural Conservation of Panel "
        "Paintings, Getty 1998.",
        "Play, pins, cover and the advice on care: common practice, no source.",
    )
    width = both(commission.piece.border_width_m, first=commission.first)
    asked = bool(commission.brief.piece.border_width_m)
    border = () if asked else (f"No border is asked for; an end or frame piece is taken {width} wide.",)
    glued = _glued(commission)
    said = [
        *commission.piece.wood.remarks,
        *commission.months.remarks,
        *border,
        *(_stress_sources(glued) if glued else ()),
    ]
    said = [text.replace("dehumidifier_holds_percent", "dehumidifier_holds in the brief") for text in said]
    return listed([*sources, *(text[:1].upper() + text[1:].rstrip(".") + "." for text in said)])


def _stress_sources(glued: Verdict) -> tuple[str, ...]:
    """How well the numbers behind the chance of a crack are known, and what was assumed."""
    panel = glued.panel
    statuses = {name: status for piece, name, status, *_ in panel.provenance if piece == "panel"}
    rows = (
        "relaxation_rate",
        "strength_variation",
        "demand_variation",
        "calibrated_strength_factor",
        "duration_factor",
    )
    assumed = "; ".join(
        f"{row.meaning}, {STATUS_WORDS[row.status].lower()}" for row in panel.assumptions if row.key in rows
    )
    return (
        *known_sentences(statuses, panel.inputs.species.name),
        f"Chance of a crack: a judgement between two views. Assumed: {assumed}.",
    )
