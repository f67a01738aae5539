"""Tables from files: found out, bounded, and nothing harmful opened."""

import io
import zipfile

import pytest
from openpyxl import Workbook

from setwright.documents.csv_table import find_delimiter
from setwright.documents.errors import DocumentError
from setwright.documents.table import cell_name
from setwright.documents.table_file import chosen, read_tables

CONTENT_TYPES = "[Content_Types].xml"


def workbook(rows=(("a", 1, 2.5),)) -> bytes:
    book = Workbook()
    for row in rows:
        book.active.append(row)
    into = io.BytesIO()
    book.save(into)
    return into.getvalue()


def with_part(data: bytes, name: str, content: bytes) -> bytes:
    """A workbook with one of its parts replaced, or one more."""
    into = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(into, "w", 8) as new:
        for item in old.infolist():
            if item.filename != name:
                new.writestr(item, old.read(item))
        new.writestr(name, content)
    return into.getvalue()


def refused(data: bytes) -> str:
    with pytest.raises(DocumentError) as error:
        read_tables(data, "t.xlsx")
    message = str(error.value)
    assert message.count("\n") == 0
    return message


@pytest.mark.parametrize("mark", [",", ";", "\t", "|"])
def test_the_delimiter_is_found(mark) -> None:
    text = f"exercise{mark}sets{mark}reps\nsquat{mark}3{mark}8\npress{mark}3{mark}10\n"
    assert find_delimiter(text) == mark
    assert read_tables(text.encode(), "t.csv")[0].rows[1] == ("squat", "3", "8")


def test_decimal_commas_do_not_make_columns() -> None:
    table = read_tables(b"squat;82,5;2,5\npress;60,5;1,5\n", "t.csv")[0]
    assert table.rows == (("squat", "82,5", "2,5"), ("press", "60,5", "1,5"))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_encodings(encoding) -> None:
    data = "Übung;Sätze\nKniebeuge;3\n".encode(encoding)
    assert read_tables(data, "t.csv")[0].rows[0] == ("Übung", "Sätze")


def test_quotes_and_lines_inside_a_cell() -> None:
    table = read_tables(b'a,b\n"x\ny","1,5"\nc,d\n', "t.csv")[0]
    assert table.rows[1] == ("x\ny", "1,5")
    assert table.lines[2] == 4


def test_cells_of_a_workbook_are_text_as_on_screen() -> None:
    table = read_tables(workbook([("a", 3, 82.5), (None, 0.1 + 0.2, True)]), "t.xlsx")[0]
    assert table.rows == (("a", "3", "82.5"), ("", "0.3", "yes"))


def test_merged_cells_are_known() -> None:
    book = Workbook()
    book.active["A1"], book.active["B2"] = "day", "x"
    book.active.merge_cells("A1:A2")
    into = io.BytesIO()
    book.save(into)
    table = read_tables(into.getvalue(), "t.xlsx")[0]
    assert table.merged == {(0, 0): (1, 0)}
    assert table.spread()[1] == ("day", "x")


def test_cell_names() -> None:
    assert [cell_name(0, 0), cell_name(6, 25), cell_name(6, 26)] == ["A1", "Z7", "AA7"]


def test_a_zip_bomb_is_refused_before_it_is_opened() -> None:
    bomb = with_part(workbook(), "xl/bomb.xml", b"0" * 30_000_000)
    assert len(bomb) < 100_000
    assert "bytes packed into" in refused(bomb)
    assert "times the packed size" in refused(with_part(workbook(), "x.bin", b"0" * 9_000_000))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_xml_entities_are_refused(encoding) -> None:
    attack = (
        '<?xml version="1.0"?><!DOCTYPE s [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">'
        '<!ENTITY c SYSTEM "file:///etc/hostname">]><sst>&b;&c;</sst>'
    ).encode(encoding)
    assert "entity" in refused(with_part(workbook(), "xl/sharedStrings.xml", attack))


def test_absurd_merged_areas_are_refused() -> None:
    data = workbook()
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        sheet = archive.read("xl/worksheets/sheet1.xml")
    merged = b'<mergeCells count="1"><mergeCell ref="A1:XFD1048576"/></mergeCells>'
    sheet = sheet.replace(b"</sheetData>", b"</sheetData>" + merged)
    assert "merged cells" in refused(with_part(data, "xl/worksheets/sheet1.xml", sheet))


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"\xd0\xcf\x11\xe0" + b"\0" * 100, "old format"),
        (b"PK\x03\x04 and then nothing", "cannot be unpacked"),
        (workbook()[:-200], "cannot be unpacked"),
        (b"\0\1\2\3", "no text"),
        (b"", "no cell with content"),
        (b"x" * 5_000_001, "bytes"),
        (b"a," * 300, "columns"),
    ],
)
def test_what_cannot_be_read_is_refused_in_one_line(data, says) -> None:
    assert says in refused(data)


def test_a_zip_that_is_no_workbook_is_refused() -> None:
    into = io.BytesIO()
    with zipfile.ZipFile(into, "w") as archive:
        archive.writestr("../../evil.txt", "x")
    assert "cannot be read" in refused(into.getvalue())


def test_a_sheet_that_is_not_there_is_named_with_those_that_are() -> None:
    with pytest.raises(DocumentError, match="'Sheet'"):
        chosen(read_tables(workbook(), "t.xlsx"), "Other", "t.xlsx")
