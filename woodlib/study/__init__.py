"""Studies: a question, a few inputs and a pure function to an answer."""

from .answer import Answer, Reading
from .inputs import Choice, Span, Switch
from .study import Study, study

__all__ = ["Answer", "Choice", "Reading", "Span", "Study", "Switch", "study"]
