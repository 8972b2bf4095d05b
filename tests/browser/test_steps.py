"""The steps of decided numbers: a browser computes what Python computes."""

from __future__ import annotations

import numpy as np

from woodlib.words.steps import STEPS, script_table

COMPUTE = "([operations, pairs]) => { const made = (0, eval)('(' + operations + ')'); " + (
    "return Object.fromEntries(Object.entries(made).map(([name, step]) => [name, pairs.map(([a, b]) => step(a, b))])); }"
)
EDGES = [[0.004, 0.004], [0.0039999999, 0.004], [0.003999, 0.004], [2.0, 0.5], [1e-9, 3.0]]


def test_every_step_gives_the_same_number_in_a_browser(offline_page):
    pairs = np.random.Generator(np.random.PCG64(2)).uniform(0.01, 4.0, size=(400, 2)).tolist() + EDGES
    found = offline_page.page.evaluate(COMPUTE, [script_table(), pairs])
    assert set(found) == set(STEPS)
    for name, step in STEPS.items():
        expected = np.array([float(step.python(a, b)) for a, b in pairs])
        np.testing.assert_allclose(found[name], expected, rtol=1e-14, atol=1e-15, err_msg=name)
