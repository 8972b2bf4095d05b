"""Running a notebook for a handout: what the screen shows meanwhile, and what a cell that fails says."""

import pytest
from nbformat.v4 import new_code_cell, new_notebook

from woodlib.errors import WoodlibError
from woodlib.handout.run import run_notebook


def test_the_kernel_keeps_its_warnings_to_itself(tmp_path, capfd):
    ran = run_notebook(new_notebook(cells=[new_code_cell("6 * 7")]), str(tmp_path))
    assert ran.cells[0].outputs[0].data["text/plain"] == "42"
    assert "WARNING" not in capfd.readouterr().err


@pytest.mark.parametrize(
    ("cell", "fragment"),
    [
        ("raise ValueError('too wide')", "too wide"),
        ("raise KeyError", "KeyError, without a word why"),
        ("raise KeyError(None)", "KeyError, without a word why"),
        ("raise ValueError('two\\nlines')", "two lines"),
    ],
)
def test_a_cell_that_fails_is_told_in_one_sentence(tmp_path, cell, fragment):
    with pytest.raises(WoodlibError) as caught:
        run_notebook(new_notebook(cells=[new_code_cell(cell)]), str(tmp_path))
    assert "The notebook stopped at a cell that says: " in str(caught.value) and fragment in str(caught.value)
    assert "\n" not in str(caught.value) and "None" not in str(caught.value)
