"""A plugin for a test run, ``-p references.broken_coefficient``: one constant of the sorption equation is 2 % off."""

from woodlib.air import sorption

_right = sorption._constants


def _wrong(temperature_c):
    w, k, k1, k2 = _right(temperature_c)
    return w, k, 1.02 * k1, k2


def pytest_configure(config) -> None:
    """Only where it is asked for as a plugin: whoever merely imports this file breaks nothing."""
    sorption._constants = _wrong
