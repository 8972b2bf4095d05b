"""What a study answers: a picture, readings, one sentence, and the picture told in words."""

from __future__ import annotations

from dataclasses import dataclass, field

from ..picture.scene import Picture
from ..words.decided import Pick
from ..words.say import Number, Said, plain_text


@dataclass(frozen=True)
class Reading:
    """A labelled number with its plain-words reading; ``tone`` is "", "fine", "watch" or "stop"."""

    label: str
    value: str | Number | Said | Pick
    words: str | Said | Pick = ""
    tone: str | Pick = ""


@dataclass(frozen=True)
class Answer:
    """The answer to a study's question for one state of its inputs."""

    picture: Picture
    headline: str | Said | Pick
    readings: tuple[Reading, ...]
    picture_in_words: str | Said | Pick = ""
    fine_print: tuple[str | Said | Pick, ...] = field(default_factory=tuple)

    def alt_text(self, units: str = "both") -> str:
        """The picture for somebody who cannot see it: what is drawn, then every reading."""
        parts = [plain_text(self.picture_in_words, units), plain_text(self.headline, units)]
        parts += [f"{reading.label}: {plain_text(reading.value, units)}." for reading in self.readings]
        return " ".join(part for part in parts if part)

    def lines(self, units: str = "both") -> list[str]:
        """The answer as lines of plain text."""
        lines = [plain_text(self.headline, units)]
        for reading in self.readings:
            words = plain_text(reading.words, units)
            lines.append(f"{reading.label}: {plain_text(reading.value, units)}" + (f" - {words}" if words else ""))
        return lines
