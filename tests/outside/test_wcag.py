"""WCAG 2.2, definitions of relative luminance and contrast ratio, worked by hand."""

import pytest

from woodlib.picture.palette import contrast

SOURCE = "WCAG 2.2, relative luminance and contrast ratio"


@pytest.mark.parametrize(
    "first, second, ratio",
    [
        ("#ffffff", "#000000", 21.0),  # 1.05 / 0.05
        ("#ffffff", "#ffffff", 1.0),
        ("#ff0000", "#ffffff", 1.05 / (0.2126 + 0.05)),
        ("#0000ff", "#000000", (0.0722 + 0.05) / 0.05),
        ("#777777", "#ffffff", 4.478),  # the grey that just misses 4.5; ((119/255 + 0.055)/1.055)^2.4 = 0.18447
    ],
)
def test_contrast(outside, first, second, ratio):
    outside(SOURCE, f"contrast of {first} on {second}", ratio, contrast(first, second), 5e-4)
