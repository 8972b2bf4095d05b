"""Roles that stand beside each other stay apart, also for eyes that lack one kind of cone, on light and dark pages.

Simulation: the matrices of Machado, Oliveira and Fernandes (2009), "A physiologically-based model for simulation of color
vision deficiency", IEEE TVCG 15(6), at full severity, on linear sRGB; the numbers are from memory. Distance: CIE 1976 L*a*b*.
Just noticeable is about 2.3 (from memory); five times that is asked for, since marks are thin and apart.
"""

from __future__ import annotations

import numpy as np
import pytest

from woodlib.picture.palette import ROLES

APART = 12.0
EYES = {
    "usual": np.eye(3),
    "no red cones": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "no green cones": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "no blue cones": np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
# sRGB to XYZ (IEC 61966-2-1).
TO_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
GROUPS = {
    "judgement": ("fine", "watch", "stop"),
    "the year": ("dry", "damp", "today", "ink", "quiet"),
    "what was said": ("said", "dry", "damp", "today", "ink", "quiet"),
    "faces of a board": ("edge", "watch", "today", "metal"),
}
STEPS = ("squeezed", "at-rest", "pull-1", "pull-2", "pull-3", "pull-4")
PAIRS = {
    tuple(sorted((first, second)))
    for group in GROUPS.values()
    for first in group
    for second in group
    if first != second
}
PAIRS |= set(zip(STEPS, STEPS[1:], strict=False)) | {("wood", "border-wood"), ("glue", "edge"), ("glue", "late-wood")}
PAIRS |= {(line, wood) for line in ("edge", "late-wood", "damp", "dry", "glue") for wood in ("wood", "border-wood")}


def lab(colour: str, eye: np.ndarray) -> np.ndarray:
    """L*, a* and b* of a colour as an eye sees it."""
    channels = np.array([int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)])
    linear = np.where(channels <= 0.04045, channels / 12.92, ((channels + 0.055) / 1.055) ** 2.4)
    xyz = TO_XYZ @ np.clip(eye @ linear, 0.0, 1.0) / TO_XYZ.sum(axis=1)
    bent = np.where(xyz > (6 / 29) ** 3, np.cbrt(xyz), xyz / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.array([116 * bent[1] - 16, 500 * (bent[0] - bent[1]), 200 * (bent[1] - bent[2])])


def test_white_and_greys_stay_what_they_are():
    for eye in EYES.values():
        assert eye.sum(axis=1) == pytest.approx([1, 1, 1], abs=2e-6)
    assert lab("#ffffff", EYES["usual"]) == pytest.approx([100, 0, 0], abs=0.05)


def test_the_simulation_confuses_what_such_eyes_confuse():
    """A red and a green of one lightness, for eyes without green cones: far apart for others, hardly for them."""
    red, green = "#b45b3c", "#6f7f3a"
    usual, without = (
        np.linalg.norm(lab(red, EYES[eye]) - lab(green, EYES[eye])) for eye in ("usual", "no green cones")
    )
    assert usual > 40 and without < usual / 2


@pytest.mark.parametrize("pair", sorted(PAIRS), ids=" and ".join)
@pytest.mark.parametrize("page", ["light", "dark"])
def test_a_pair_stays_apart(pair, page):
    first, second = (getattr(ROLES[role], page) for role in pair)
    for name, eye in EYES.items():
        assert np.linalg.norm(lab(first, eye) - lab(second, eye)) >= APART, name
