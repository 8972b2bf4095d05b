"""What a learner has committed to, and who wants to hear of it; a diary keeps it from one kernel to the next.

A notebook may be run in one go before anybody predicts; whatever shows a prediction later therefore listens for it.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass

from ..errors import InputError
from .diary import Diary
from .question import Question


@dataclass(frozen=True)
class Commitment:
    """A question and the answer that somebody committed to before seeing."""

    question: Question
    value: float | str
    typed: str = ""

    @property
    def text(self) -> str:
        """The answer as it is shown: as it was typed, or chosen."""
        return self.typed or self.question.text(self.value)


class Ledger:
    """Questions asked and predictions made, by key.

    >>> ledger = Ledger()
    >>> ledger.ask(Question("swell", "Which way?", options=("wider", "narrower")))
    >>> ledger.commit("swell", "Wider").text
    'wider'
    >>> ledger.commit("swell", "narrower").text  # a commitment stands
    'wider'
    """

    def __init__(self, diary: Diary | None = None) -> None:
        self.diary = diary
        self.not_kept = ""
        """Why the last prediction could not be written down, "" when it was."""
        self.questions: dict[str, Question] = {}
        self.commitments: dict[str, Commitment] = {}
        self._listeners: dict[str, list[Callable[[], None]]] = {}

    def ask(self, question: Question) -> None:
        """Remember a question and what was said to it in an earlier kernel.

        Asking another one under the same key drops what was answered to the old one.
        """
        if self.questions.get(question.key, question) != question:
            self.commitments.pop(question.key, None)
        self.questions[question.key] = question
        said = (
            self.diary.said(question.key, question.words)
            if self.diary and question.key not in self.commitments
            else None
        )
        if said is not None:
            with suppress(InputError):  # the question takes other answers than it did
                self.commitments[question.key] = _commitment(question, said)
        self.tell(question.key)

    def commit(self, key: str, given: object) -> Commitment:
        """Keep an answer, unless there is one already. Raises InputError for what cannot be read."""
        if key not in self.questions:
            raise InputError(f"Nothing was asked under {key!r} yet; ask for a prediction first, with predict(...).")
        if key not in self.commitments:
            commitment = _commitment(self.questions[key], given)
            self.commitments[key] = commitment
            if self.diary is not None:
                self.not_kept = self.diary.write(key, commitment.question.words, commitment.typed or commitment.value)
            self.tell(key)
        return self.commitments[key]

    def restore(self, key: str, commitment: Commitment | None) -> None:
        """Put this in place of what was kept, or nothing."""
        self.commitments.pop(key, None)
        if commitment is not None:
            self.commitments[key] = commitment
        self.tell(key)

    def start_over(self) -> str:
        """Forget what was said, in this kernel and for the next; returns why that failed, "" when it did not."""
        failed = "" if self.diary is None else self.diary.start_over()
        for key in [*self.commitments]:
            self.restore(key, None)
        return failed

    def listen(self, key: str, action: Callable[[], None]) -> None:
        """Call ``action`` whenever something about this key changes."""
        self._listeners.setdefault(key, []).append(action)

    def tell(self, key: str) -> None:
        """Let everybody who listens for this key look again."""
        for action in self._listeners.get(key, ()):
            action()


def _commitment(question: Question, given: object) -> Commitment:
    value = question.read(given)
    typed = " ".join(given.split()) if isinstance(given, str) and not isinstance(value, str) else ""
    return Commitment(question, value, typed)


kept = Ledger(Diary())
"""The ledger of this kernel."""
