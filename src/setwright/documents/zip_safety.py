"""What is refused of a zipped document before anything in it is opened up."""

from __future__ import annotations

import io
import re
import zipfile
from typing import Final

from setwright.documents.errors import DocumentError, Fault

# Plans and logs are far smaller; a workbook's own XML shrinks to a tenth or a thirtieth.
MAX_UNPACKED: Final = 20_000_000
MAX_RATIO: Final = 200
RATIO_FROM: Final = 1_000_000
MAX_MEMBERS: Final = 2000
MAX_MERGED_CELLS: Final = 50_000
_MERGED = re.compile(rb"mergeCell\s[^>]*?ref\s*=\s*[\"']\$?([A-Z]+)\$?(\d+):\$?([A-Z]+)\$?(\d+)")
# A declaration of a document type or an entity, in the encodings XML may have.
_DECLARED = tuple(
    word.encode(encoding)
    for word in ("<!DOCTYPE", "<!ENTITY")
    for encoding in ("utf-8", "utf-16-le", "utf-16-be")
)


def refuse_unsafe_zip(data: bytes, name: str) -> None:
    """Refuse zip bombs, entity declarations in XML and merged areas of absurd size.

    Raises:
        DocumentError: with the reason.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            _refuse_size(archive, len(data), name)
            for item in archive.infolist():
                if item.filename.lower().endswith((".xml", ".rels", ".vml")):
                    _refuse_content(archive.read(item), item.filename, name)
    except DocumentError:
        raise
    except Exception as error:  # zipfile raises many kinds on a broken archive
        found = f"a workbook that cannot be unpacked ({type(error).__name__})"
        raise DocumentError(name, (Fault("", found, "an undamaged XLSX file"),)) from None


def _refuse_size(archive: zipfile.ZipFile, packed: int, name: str) -> None:
    members = archive.infolist()
    unpacked = sum(item.file_size for item in members)
    if unpacked > MAX_UNPACKED or (unpacked > RATIO_FROM and unpacked > MAX_RATIO * packed):
        raise _refused(
            name,
            f"{unpacked:,} bytes packed into {packed:,}",
            f"at most {MAX_UNPACKED:,} bytes unpacked, and {MAX_RATIO} times the packed size",
        )
    if len(members) > MAX_MEMBERS:
        raise _refused(name, f"{len(members)} packed files", f"at most {MAX_MEMBERS}")
    if any(item.flag_bits & 1 for item in members):
        raise _refused(name, "an encrypted file", "a workbook without a password")


def _refuse_content(content: bytes, member: str, name: str) -> None:
    if any(word in content for word in _DECLARED):
        raise _refused(
            name,
            f"a document type or entity declared in {member!r}",
            "a workbook without either (spreadsheet programs write none)",
        )
    area = sum(
        (abs(_column(right) - _column(left)) + 1) * (abs(int(bottom) - int(top)) + 1)
        for left, top, right, bottom in _MERGED.findall(content)
    )
    if area > MAX_MERGED_CELLS:
        raise _refused(
            name, f"{area:,} merged cells in {member!r}", f"at most {MAX_MERGED_CELLS:,}"
        )


def _column(letters: bytes) -> int:
    number = 0
    for letter in letters[:4]:
        number = 26 * number + letter - ord("A") + 1
    return number


def _refused(name: str, found: str, allowed: str) -> DocumentError:
    return DocumentError(name, (Fault("", found, allowed),))
