"""The names of a class: cleaned, never more than a label, and refused in a sentence where they cannot be used."""

from __future__ import annotations

import pytest

from woodlib.classroom.names import MOST_STUDENTS, clean_name, read_names, students
from woodlib.errors import InputError


def written(folder, content: bytes):
    file = folder / "names.txt"
    file.write_bytes(content)
    return file


def test_names_are_read_one_a_line_and_cleaned(tmp_path):
    file = written(tmp_path, "\ufeffAda Oak\r\n\r\n  Bo \u202eReverse\x00\t B. \nZo\u00eb\n".encode())
    assert read_names(file) == ("Ada Oak", "Bo Reverse B.", "Zo\u00eb")


@pytest.mark.parametrize("content", [b"", b"\n\n \x00\n", b"\xff\xfe\x00bad", b"x" * 41, b"a\n" * (MOST_STUDENTS + 1)])
def test_a_list_that_cannot_be_used_is_refused_in_a_sentence(tmp_path, content):
    with pytest.raises(InputError) as refused:
        read_names(written(tmp_path, content))
    assert len(refused.value.problems) == 1 and str(refused.value).endswith(".")


def test_a_missing_list_is_refused(tmp_path):
    with pytest.raises(InputError, match="There is no file"):
        read_names(tmp_path / "none.txt")


def test_a_class_without_names_is_counted():
    assert students(None)[-1] == "Student 12" and students(3) == ("Student 1", "Student 2", "Student 3")
    assert students(None, ("Ada",)) == ("Ada",)
    for count, names in ((0, ()), (61, ()), (3, ("Ada",))):
        with pytest.raises(InputError):
            students(count, names)


def test_a_name_of_marks_alone_is_no_name():
    assert clean_name("\u200b\u202e\x07") == ""
