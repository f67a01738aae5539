"""Options of the form KEY=VALUE, and a file of answers."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.documents.errors import DocumentError, Fault


def read_map(words: Sequence[str]) -> dict[str, str]:
    """Roles and the headings that hold them.

    Raises:
        DocumentError: when one is not of the form ROLE=HEADING, or a role is said twice.
    """
    said: dict[str, str] = {}
    for one in words:
        role, equals, heading = one.partition("=")
        role = role.strip().casefold().replace("-", "_")
        if not equals or not heading.strip():
            raise _refused("--map", one, 'ROLE=HEADING, for example load="Weight (kg)"')
        if role in said:
            raise _refused("--map", one, f"one heading for {role}")
        said[role] = heading.strip()
    return said


def read_answers(words: Sequence[str], file: str | None) -> dict[str, str]:
    """Answers from options and from a file; an option goes before the file.

    Raises:
        DocumentError: when an answer is not of the form KEY=ANSWER, or the file is no mapping.
    """
    from setwright.plan.importing.question import spread

    given = _from_file(file) if file else {}
    for one in words:
        key, equals, answer = one.rpartition("=")
        if not equals or not key.strip() or not answer.strip():
            raise _refused("--answer", one, 'KEY=ANSWER, for example "14 reps=8"')
        given[key] = answer
    return spread(given)


def _from_file(file: str) -> dict[str, str]:
    from setwright.cli.common import read_text
    from setwright.documents.yaml_io import read_yaml

    text, name = read_text(file)
    data = read_yaml(text, name).data
    if not isinstance(data, dict) or any(isinstance(one, dict | list) for one in data.values()):
        raise _refused(name, "something else", "one `KEY: ANSWER` a line")
    return {str(key): "" if value is None else str(value) for key, value in data.items()}


def _refused(name: str, found: str, allowed: str) -> DocumentError:
    return DocumentError(name, (Fault("", repr(found), allowed),))
