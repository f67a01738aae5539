"""The compiled copy of a knowledge folder never outlives its YAML."""

import sys

import pytest

from setwright.documents.base import Document
from setwright.documents.errors import DocumentError
from setwright.documents.knowledge import compile_folder, load_folder


class Word(Document):
    word: str
    weights: tuple[float, ...] = ()


@pytest.fixture
def package(tmp_path, monkeypatch):
    (tmp_path / "invented_room" / "words").mkdir(parents=True)
    (tmp_path / "invented_room" / "__init__.py").write_text("")
    (tmp_path / "invented_room" / "words" / "a.yaml").write_text("word: one\nweights: [1, 2.5]\n")
    monkeypatch.syspath_prepend(tmp_path)
    yield tmp_path / "invented_room" / "words"
    sys.modules.pop("invented_room", None)


def test_the_copy_reads_as_the_yaml(package):
    slow = load_folder("invented_room", "words", Word)
    compile_folder("invented_room", "words", Word)
    assert (
        load_folder("invented_room", "words", Word) == slow == (Word(word="one", weights=(1, 2.5)),)
    )


def test_the_copy_is_what_is_read(package):
    copy = compile_folder("invented_room", "words", Word)
    copy.write_text(copy.read_text().replace('"one"', '"copied"'))
    assert load_folder("invented_room", "words", Word)[0].word == "copied"


def test_a_stale_copy_is_passed_over(package):
    compile_folder("invented_room", "words", Word)
    (package / "a.yaml").write_text("word: two\n")
    assert load_folder("invented_room", "words", Word) == (Word(word="two"),)


def test_a_wrong_file_is_named(package):
    (package / "b.yaml").write_text("wort: three\n")
    with pytest.raises(DocumentError, match=r"b\.yaml"):
        load_folder("invented_room", "words", Word)
