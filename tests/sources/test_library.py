"""The findings: complete, consistent, and every id that is cited is there."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest

from setwright.anatomy.atlas import parts
from setwright.audit.registry import registry
from setwright.exercises import catalogue
from setwright.response.factors import COEFFICIENTS
from setwright.sources import library
from setwright.sources.model import Value

SOURCE = Path(library.__file__).parents[1]
DOI = re.compile(r"10\.\d{4,9}/\S+")
# Read on a page that gives no title of what it reports; each says so in its note.
UNCITED = {
    "calf-past-failure-partials-untrained",
    "leg-press-range-of-motion-trained",
    "percent-1rm-repetitions-table-alternative",
    "rhabdo-eccentric",
}
# What marks a quoted word of code as the id of a finding.
MARKS = re.compile(r"-(meta|trial|review|practice|mri|emg|19\d\d|20[0-2]\d)(-|$)|^(practice|flag)-")


def test_there_are_findings_on_every_subject_the_audit_needs() -> None:
    assert len(library.findings()) > 300
    assert {
        "common-practice",
        "weekly-volume",
        "session-volume",
        "rest-between-sets",
        "rir-accuracy",
        "exercise-growth",
        "free-barbell-lifts",
        "rhabdomyolysis",
    } <= set(library.topics())


def test_ids_are_unique_over_all_files() -> None:
    ids = re.findall(
        r"^ *- id: (\S+)$",
        "\n".join(path.read_text() for path in (SOURCE / "sources/findings").glob("*.yaml")),
        flags=re.MULTILINE,
    )
    assert [ident for ident, count in Counter(ids).items() if count > 1] == []
    assert set(ids) == set(library.findings())


def test_one_finding_is_found_by_its_id() -> None:
    found = library.finding("session-volume-puos-2025")
    assert found.topic == "session-volume"
    assert any(value.value == 11 for value in found.values)


def test_an_unknown_id_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        library.finding("no-such-finding")


def test_a_finding_is_one_plain_statement() -> None:
    odd = [
        item.id
        for item in library.findings().values()
        if not (item.finding.endswith(".") and 20 <= len(item.finding) <= 240)
    ]
    assert odd == []


def test_a_citation_has_a_title_a_sane_year_and_a_doi_that_looks_like_one() -> None:
    odd = [
        (item.id, citation)
        for item in library.findings().values()
        for citation in item.citations
        if len(citation.title) < 6
        or not (citation.year is None or 1900 < citation.year <= 2026)
        or not (citation.doi is None or DOI.fullmatch(citation.doi))
    ]
    assert odd == []


def test_what_was_read_is_cited() -> None:
    """Without a citation it is arithmetic, a remembered figure or the trade's own."""
    uncited = {
        item.id
        for item in library.findings().values()
        if not item.citations
        and item.basis not in ("common practice", "derived")
        and item.read != "from memory"
    }
    assert uncited == UNCITED
    assert all(library.finding(ident).note for ident in uncited)


def test_a_value_lies_in_its_own_interval() -> None:
    odd = [
        (item.id, value)
        for item in library.findings().values()
        for value in item.values
        if not _low(value) <= (_low(value) if value.value is None else value.value) <= _high(value)
    ]
    assert odd == []


def _low(value: Value) -> float:
    return float("-inf") if value.low is None else value.low


def _high(value: Value) -> float:
    return float("inf") if value.high is None else value.high


def test_facts_of_the_trade_are_marked_as_such() -> None:
    practice = [item for item in library.findings().values() if item.id.startswith("practice-")]
    assert len(practice) >= 15
    assert all(item.basis == "common practice" and not item.citations for item in practice)


def test_no_name_or_link_stands_in_a_finding() -> None:
    text = "\n".join(path.read_text() for path in (SOURCE / "sources/findings").glob("*.yaml"))
    assert re.findall(r"\bet al\b|https?:|www\.", text) == []


def test_every_finding_the_catalogue_cites_exists() -> None:
    cited = {
        ident
        for exercise in catalogue.exercises()
        for ident in (*exercise.findings, *(one.source for one in exercise.published.values()))
    }
    assert cited
    assert cited - set(library.findings()) == set()


def test_every_finding_the_atlas_cites_exists() -> None:
    cited = {ident for part in parts() for ident in part.sources}
    assert cited
    assert cited - set(library.findings()) == set()


def test_every_finding_the_criteria_and_coefficients_cite_exists() -> None:
    cited = {ident for item in registry() for ident in item.evidence}
    cited |= {ident for item in COEFFICIENTS.values() for ident in item.sources}
    assert cited - set(library.findings()) - {library.COMMON_PRACTICE, "from memory"} == set()


def test_every_word_in_the_code_that_looks_like_a_finding_is_one() -> None:
    words = {
        word
        for path in SOURCE.rglob("*.py")
        for word in re.findall(r'"([a-z0-9]+(?:-[a-z0-9]+)+)"', path.read_text())
        if MARKS.search(word)
    }
    assert "practice-rest" in words
    assert words - set(library.findings()) - {"meta-analysis"} == set()
