"""What the standard TOML reader complains about, in words that do not need a programmer."""

from __future__ import annotations

# beginning of the reader's reason -> what is meant, first match counts
_MEANT = (
    ("Cannot declare", "a table stands twice"),
    ("Cannot overwrite", "a key stands twice"),
    ("Cannot mutate", "a table stands twice"),
    ("Cannot redefine", "a table stands twice"),
    ("Duplicate inline table key", "a key stands twice"),
    ("Illegal character '\\n'", "the quotation mark at its end is missing"),
    ("Illegal character '\"'", "a quotation mark too many"),
    ("Illegal character", "a character that cannot be seen"),
    ("Found invalid character", "a character that cannot be seen"),
    ("Unterminated", "the quotation mark at its end is missing"),
    ("Unclosed array", "the bracket at its end is missing"),
    ("Unclosed inline table", "the brace at its end is missing"),
    ("Expected ']'", "the bracket at the end of the heading is missing"),
    ("Expected '='", "there is no = between key and value"),
    ("Invalid initial character for a key part", "a key is missing"),
    ("Unescaped '\\'", "a backslash inside quotation marks: put the text between single ones"),
    ("Invalid hex value", "a backslash inside quotation marks: put the text between single ones"),
    ("Escaped character", "a backslash inside quotation marks: put the text between single ones"),
    ("Invalid value", "the value is missing, or is text without quotation marks"),
    ("Invalid statement", "this is neither a key nor a heading"),
    ("Expected newline", "more follows where the line should end"),
)

TWICE = {
    "a table stands twice": "this table stands twice; put its keys together under one heading.",
    "a key stands twice": "this key stands twice; keep one of the two.",
}


def in_plain_words(reason: str) -> str:
    """The reason without the reader's own vocabulary.

    >>> in_plain_words("Cannot declare ('piece',) twice")
    'a table stands twice'
    """
    return next((meant for begins, meant in _MEANT if reason.startswith(begins)), "it is not written as a brief is")
