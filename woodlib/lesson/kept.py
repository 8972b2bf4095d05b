"""What a learner has committed to, kept while the kernel runs, and who wants to hear of it.

A notebook may be run in one go before anybody predicts; whatever shows a prediction later therefore listens for it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from ..errors import InputError
from .question import Question


@dataclass(frozen=True)
class Commitment:
    """A question and the answer that somebody committed to before seeing."""

    question: Question
    value: float | str

    @property
    def text(self) -> str:
        """The answer as it is shown."""
        return self.question.text(self.value)


class Ledger:
    """Questions asked and predictions made, by key.

    >>> ledger = Ledger()
    >>> ledger.ask(Question("swell", "Which way?", options=("wider", "narrower")))
    >>> ledger.commit("swell", "Wider").text
    'wider'
    >>> ledger.commit("swell", "narrower").text  # a commitment stands
    'wider'
    """

    def __init__(self) -> None:
        self.questions: dict[str, Question] = {}
        self.commitments: dict[str, Commitment] = {}
        self._listeners: dict[str, list[Callable[[], None]]] = {}

    def ask(self, question: Question) -> None:
        """Remember a question; asking another one under the same key drops what was answered to the old one."""
        if self.questions.get(question.key, question) != question:
            self.commitments.pop(question.key, None)
        self.questions[question.key] = question
        self.tell(question.key)

    def commit(self, key: str, given: object) -> Commitment:
        """Keep an answer, unless there is one already. Raises InputError for what cannot be read."""
        if key not in self.questions:
            raise InputError(f"Nothing was asked under {key!r} yet; ask for a prediction first, with predict(...).")
        if key not in self.commitments:
            question = self.questions[key]
            self.commitments[key] = Commitment(question, question.read(given))
            self.tell(key)
        return self.commitments[key]

    def restore(self, key: str, commitment: Commitment | None) -> None:
        """Put back what was kept before a rehearsal, or nothing."""
        self.commitments.pop(key, None)
        if commitment is not None:
            self.commitments[key] = commitment
        self.tell(key)

    def listen(self, key: str, action: Callable[[], None]) -> None:
        """Call ``action`` whenever something about this key changes."""
        self._listeners.setdefault(key, []).append(action)

    def tell(self, key: str) -> None:
        """Let everybody who listens for this key look again."""
        for action in self._listeners.get(key, ()):
            action()


kept = Ledger()
"""The ledger of this kernel."""
