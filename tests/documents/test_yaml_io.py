"""YAML read into plain data with positions; whatever is no plain YAML is refused."""

import pytest

from setwright.documents.errors import DocumentError
from setwright.documents.yaml_build import MAX_DEPTH
from setwright.documents.yaml_io import MAX_CHARACTERS, read_yaml, write_text
from setwright.documents.yaml_text import block


def refusal(text):
    with pytest.raises(DocumentError) as caught:
        read_yaml(text, "file.yaml")
    return caught.value.faults[0]


def test_values_and_their_places():
    loaded = read_yaml("a: 1\nb:\n  - x: 2.5\n    y: [yes, true, null]\n", "file.yaml")
    assert loaded.data == {"a": 1, "b": [{"x": 2.5, "y": ["yes", True, None]}]}
    assert loaded.place(("b", 0, "x")) == (3, 8)
    assert loaded.place(("b", 0, "y", 1)) == (4, 14)
    assert loaded.key_place(("b", 0, "y")) == (4, 5)
    assert loaded.place(("b", 0, "missing", 3)) == (3, 5)


@pytest.mark.parametrize(
    "scalar", ["017", "0o17", "0x1F", "1e3", "1_000", ".nan", ".inf", "-.inf", "1:30", "no", "NaN"]
)
def test_surprising_scalars_stay_text(scalar):
    assert read_yaml(f"a: {scalar}", "file.yaml").data == {"a": scalar}


@pytest.mark.parametrize(
    ("text", "line", "column", "says"),
    [
        ("a: 1\na: 2\n", 2, 1, "again"),
        ("a:\n  - b\n - c\n", 3, 2, "expected"),
        ("a:\n\t- b\n", 2, 1, "a tab"),
        ("a: &x [1]\nb: *x\n", 1, 4, "anchor"),
        ("a: *x\n", 1, 4, "anchor"),
        ("a: !!python/object:os.system x\n", 1, 4, "tag"),
        ("a: 1\n---\nb: 2\n", 2, 1, "second document"),
        ("? [a]\n: 1\n", 1, 3, "key"),
        ("a: b: c\n", 1, 5, "mapping values"),
        ("a: \x07\n", 1, 4, "character"),
        ('a: "\\ud800"\n', 1, 4, "half a character"),
        ("a: " + "[" * 5000, 1, 3 + MAX_DEPTH, "too deep"),
        ("- " * 5000 + "x", 1, 2 * MAX_DEPTH + 1, "too deep"),
    ],
)
def test_refused_with_line_and_column(text, line, column, says):
    fault = refusal(text)
    assert (fault.line, fault.column) == (line, column)
    assert says in fault.found


@pytest.mark.parametrize(
    "text", ["", "# only a comment\n", "x" * (MAX_CHARACTERS + 1), "\ud800", "%YAML x\n"]
)
def test_refused_whole(text):
    assert refusal(text).allowed


def test_an_alias_bomb_is_refused_before_it_grows():
    bomb = "a0: &a0 [x]\n" + "".join(
        f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 9)}]\n" for n in range(1, 30)
    )
    assert "anchor" in refusal(bomb).found


def test_a_byte_order_mark_and_windows_lines_are_read():
    assert read_yaml("\ufeffa: 1\r\nb: 2\r\n", "file.yaml").data == {"a": 1, "b": 2}


def test_a_file_is_written_whole_and_nothing_is_left_beside_it(tmp_path):
    path = tmp_path / "plan.yaml"
    path.write_text("old", encoding="utf-8")
    path.chmod(0o640)
    write_text(path, "new ×\n")
    assert path.read_bytes() == "new ×\n".encode()
    assert path.stat().st_mode & 0o777 == 0o640
    assert [other.name for other in tmp_path.iterdir()] == ["plan.yaml"]


def test_a_failed_write_keeps_the_old_file(tmp_path):
    path = tmp_path / "plan.yaml"
    path.write_text("old", encoding="utf-8")
    with pytest.raises(UnicodeEncodeError):
        write_text(path, "\ud800")
    assert path.read_text(encoding="utf-8") == "old"
    assert [other.name for other in tmp_path.iterdir()] == ["plan.yaml"]


def test_a_folder_that_is_not_there_is_a_document_error(tmp_path):
    with pytest.raises(DocumentError, match="a folder that can be written"):
        write_text(tmp_path / "none" / "plan.yaml", "x")


def test_data_written_as_blocks_reads_back():
    data = {
        "text": "a: b",
        "empty": "",
        "number": 1e-7,
        "flag": False,
        "nothing": None,
        "list": ["a, b", 1, "yes", "on #"],
        "members": [{"x": 1, "y": {"z": "- q"}}, {"x": [], "y": {}}],
        "odd\nkey": "\u2028\x7f\U0001f3cb",
    }
    assert read_yaml("\n".join(block(data)), "file.yaml").data == data
