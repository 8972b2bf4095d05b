"""Pictures as a PDF at true scale, a page each, written plainly, which takes a hundredth of the time of a plotting library.

Source: ISO 32000-1, which calls for the 14 standard typefaces used here; text is WinAnsi. Other letters take the library.
"""

from __future__ import annotations

import warnings
from collections.abc import Sequence
from functools import cache
from itertools import accumulate
from unicodedata import bidirectional

from ..words.decided import chosen
from .letters import wide
from .palette import ROLES
from .scene import Area, Circle, Line, Mark, Picture, Words, flatten_points, walk

POINT = 0.75  # of a px of a 96th of an inch
ROUND = 0.5523  # reach of the handles of a curve that stands for a quarter of a circle


def sheets_pdf(pictures: Sequence[Picture]) -> bytes:
    """All sheets as one PDF, a page each; the same sheets always give the same bytes."""
    words = [mark.text for picture in pictures for mark in walk(picture.marks) if isinstance(mark, Words)]
    try:
        "".join(map(str, words)).encode("cp1252")
    except UnicodeEncodeError:
        return _plotted(pictures)
    pages = [6 + 2 * number for number in range(len(pictures))]
    kids = " ".join(f"{page} 0 R" for page in pages)
    faces = ("Helvetica", "Helvetica-Bold")
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        f"<< /Type /Pages /Kids [{kids}] /Count {len(pages)} >>".encode(),
        *(f"<< /Type /Font /Subtype /Type1 /BaseFont /{f} /Encoding /WinAnsiEncoding >>".encode() for f in faces),
        b"<< /Font << /R 3 0 R /B 4 0 R >> >>",
    ]
    for picture, page in zip(pictures, pages, strict=True):
        size = f"{picture.width * POINT:.3f} {picture.height * POINT:.3f}"
        objects.append(
            f"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 {size}] /Resources 5 0 R /Contents {page + 1} 0 R >>".encode()
        )
        drawn = f"{POINT} 0 0 -{POINT} 0 {picture.height * POINT:.3f} cm 1 J 1 j\n".encode()
        drawn += b"".join(_drawn(mark) for mark in picture.marks)
        objects.append(f"<< /Length {len(drawn)} >>\nstream\n".encode() + drawn + b"\nendstream")
    bodies = [f"{n} 0 obj\n".encode() + body + b"\nendobj\n" for n, body in enumerate(objects, start=1)]
    head = b"%PDF-1.4\n%\xe2\xe3\xcf\xd3\n"
    *starts, end = accumulate((len(body) for body in bodies), initial=len(head))
    rows = "".join(f"{start:010d} 00000 n \n" for start in starts)
    table = f"xref\n0 {len(bodies) + 1}\n0000000000 65535 f \n{rows}"
    tail = f"trailer\n<< /Size {len(bodies) + 1} /Root 1 0 R >>\nstartxref\n{end}\n%%EOF\n"
    return head + b"".join(bodies) + (table + tail).encode()


def can_print(text: str) -> bool:
    """Whether a PDF of this kit can write a text: its letters are in a typeface, and run from left to right.

    >>> can_print("Zo\u00eb"), can_print("\u0141ukasz"), can_print("\u738b")
    (True, True, False)
    """
    try:
        text.encode("cp1252")
    except UnicodeEncodeError:
        return (
            not any(bidirectional(letter) in ("R", "AL", "AN") for letter in text) and set(map(ord, text)) <= _letters()
        )
    return True


@cache
def _letters() -> frozenset[int]:
    from matplotlib.font_manager import findfont
    from matplotlib.ft2font import FT2Font

    return frozenset(FT2Font(findfont("DejaVu Sans")).get_charmap())


def _plotted(pictures: Sequence[Picture]) -> bytes:
    from io import BytesIO

    from matplotlib.backends.backend_pdf import PdfPages

    from .printed import figure

    buffer = BytesIO()
    with warnings.catch_warnings(), PdfPages(buffer, metadata={"CreationDate": None}) as pages:
        warnings.filterwarnings(
            "ignore", "Glyph"
        )  # a letter that the font lacks is a box on paper; no warning of a machine
        for picture in pictures:
            pages.savefig(figure(picture))
    return buffer.getvalue()


def _colour(mark: Line | Area | Circle | Words) -> str:
    text = ROLES[str(chosen(mark.role))].light
    return " ".join(f"{int(text[i : i + 2], 16) / 255:.3f}" for i in (1, 3, 5))


def _path(points: object) -> str:
    flat = [f"{float(value):.2f}" for value in flatten_points(points)]
    pairs = list(zip(flat[::2], flat[1::2], strict=True))
    return " ".join(f"{x} {y} {'l' if number else 'm'}" for number, (x, y) in enumerate(pairs))


def _drawn(mark: Mark) -> bytes:
    if isinstance(mark, Line):
        said = f"q {_colour(mark)} RG {mark.width:g} w [{mark.dash}] 0 d {_path(mark.points)} S Q\n"
    elif isinstance(mark, Area):
        said = f"q {_colour(mark)} rg {_path(mark.points)} h f Q\n"
    elif isinstance(mark, Circle):
        x, y, r = float(mark.x), float(mark.y), float(mark.radius)
        k = ROUND * r
        curves = ((r, k, k, r, 0, r), (-k, r, -r, k, -r, 0), (-r, -k, -k, -r, 0, -r), (k, -r, r, -k, r, 0))
        path = f"{x + r:.2f} {y:.2f} m " + " ".join(
            " ".join(f"{value + (y if n % 2 else x):.2f}" for n, value in enumerate(curve)) + " c" for curve in curves
        )
        paint = f"{_colour(mark)} rg {path} f" if mark.filled else f"{_colour(mark)} RG {mark.width:g} w {path} S"
        said = f"q {paint} Q\n"
    elif isinstance(mark, Words):
        return _lettered(mark)
    else:
        inside = b"".join(map(_drawn, mark.marks))
        return f"q {_path(mark.points)} h W n\n".encode() + inside + b"Q\n"
    return said.encode()


def _lettered(mark: Words) -> bytes:
    """A text fitted into the room that the sheet kept for it, whatever the typeface."""
    text = str(mark.text)
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[mark.anchor]
    x = float(mark.x) - share * 0.86 * wide(text, mark.size)
    escaped = text.encode("cp1252").replace(b"\\", b"\\\\").replace(b"(", b"\\(").replace(b")", b"\\)")
    face = "B" if mark.bold else "R"
    before = f"BT /{face} {mark.size:g} Tf {_colour(mark)} rg 1 0 0 -1 {x:.2f} {float(mark.y):.2f} Tm ("
    return before.encode() + escaped + b") Tj ET\n"
