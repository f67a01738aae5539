"""An archive read back: a client's folder in a zip file, from here or from the command line."""

from __future__ import annotations

import io
import json
import zipfile
from dataclasses import dataclass
from datetime import date
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.zip_safety import refuse_unsafe_zip
from setwright.plan.client_folder import (
    DECISIONS,
    INTAKE,
    LOG,
    MAX_BYTES,
    PLANS,
    ClientFolder,
    open_folder,
    read_plans,
)
from setwright.plan.read import is_yaml
from setwright.plan.week import Plan
from setwright.plan.write import write_plan
from setwright.web.sharing.archive import ABOUT, DRAFTS

MOST_PACKED = 5_000_000
NOTES, NAME = 20_000, 60


@dataclass(frozen=True)
class Archived:
    """What an archive holds.

    Attributes:
        folder: as the engine reads it.
        name: of the person.
        notes: the coach's; empty when the archive has none.
        intake: its text.
        plans: text of every plan sent, by its Monday.
        drafts: text of every plan not sent, by its Monday.
    """

    folder: ClientFolder
    name: str
    notes: str
    intake: str
    plans: dict[date, str]
    drafts: dict[date, str]


def read_archive(data: bytes, name: str) -> Archived:
    """Read an archive whole, or refuse it whole.

    Args:
        data: the zip file.
        name: of the file, for messages.

    Raises:
        DocumentError: with everything that is at fault.
    """
    if len(data) > MOST_PACKED:
        fault = Fault("", f"{len(data):,} bytes", f"at most {MOST_PACKED:,} bytes")
        raise DocumentError(name, (fault,))
    refuse_unsafe_zip(data, name)
    with TemporaryDirectory(prefix="setwright-import-") as temporary:
        place = Path(temporary)
        _unpack(data, name, place)
        try:
            return _read(place)
        except DocumentError as error:
            shown = error.name.replace(f"{temporary}/", "").replace(temporary, name)
            raise DocumentError(shown, error.faults) from None


def _unpack(data: bytes, name: str, place: Path) -> None:
    """Write the known files of the folder; a name never leads anywhere else."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        files = {item.filename: item for item in archive.infolist() if not item.is_dir()}
        tops = [one for one in files if PurePosixPath(one).name == INTAKE]
        roots = sorted((str(PurePosixPath(one).parent) for one in tops), key=len)
        if not roots:
            fault = Fault("", f"no {INTAKE} in it", f"a client's folder, with {INTAKE}")
            raise DocumentError(name, (fault,))
        root = PurePosixPath(roots[0])
        for single in (INTAKE, LOG, DECISIONS, ABOUT):
            _copy(archive, files.get(str(root / single)), place / single, name)
        for folder in (PLANS, DRAFTS):
            (place / folder).mkdir()
            for path in files:
                if PurePosixPath(path).parent == root / folder and path.endswith(".yaml"):
                    _copy(archive, files[path], place / folder / PurePosixPath(path).name, name)


def _copy(archive: zipfile.ZipFile, item: zipfile.ZipInfo | None, to: Path, name: str) -> None:
    if item is None:
        return
    try:
        to.write_bytes(archive.read(item))
    except (OSError, ValueError, RuntimeError, zipfile.BadZipFile, NotImplementedError) as error:
        found = f"{item.filename[:80]!r} cannot be unpacked"
        raise DocumentError(name, (Fault("", found, "an undamaged zip file"),)) from error


def _read(place: Path) -> Archived:
    folder = open_folder(place)
    about = _about(place / ABOUT)
    return Archived(
        folder,
        _words(about.get("name"))[:NAME].strip() or folder.intake.name[:NAME],
        _words(about.get("notes"))[:NOTES],
        (place / INTAKE).read_text(encoding="utf-8-sig"),
        _texts(folder.plans, place / PLANS),
        _texts(read_plans(place / DRAFTS), place / DRAFTS),
    )


def _texts(plans: tuple[tuple[date, Plan], ...], place: Path) -> dict[date, str]:
    """Plans as they were written, those in plain words as documents."""
    found = {}
    for monday, plan in plans:
        text = (place / f"{monday}.yaml").read_text(encoding="utf-8-sig")
        found[monday] = text if is_yaml(text) else write_plan(plan)
    return found


def _words(value: object) -> str:
    """Text without characters that no database keeps."""
    text = value if isinstance(value, str) else ""
    return "".join(one for one in text if one >= " " or one in "\n\t")


def _about(path: Path) -> dict[str, object]:
    if not path.is_file():
        return {}
    try:
        data = json.loads(path.read_bytes()[:MAX_BYTES])
    except (ValueError, RecursionError):
        raise DocumentError(ABOUT, (Fault("", "no JSON", "the file as it was exported"),)) from None
    return data if isinstance(data, dict) else {}
