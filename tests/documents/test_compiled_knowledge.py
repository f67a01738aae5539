"""The compiled copies in the tree are those of the YAML beside them (mend: `make knowledge`)."""

import pytest

from setwright.documents.knowledge import COMPILED, digest_of, folder_of


@pytest.mark.parametrize(
    ("package", "folder"),
    [
        ("setwright.anatomy", "parts"),
        ("setwright.exercises", "patterns"),
        ("setwright.sources", "findings"),
    ],
)
def test_the_copy_is_fresh(package, folder):
    place = folder_of(package, folder)
    header = (place / COMPILED).read_text(encoding="utf-8").partition("\n")[0]
    assert digest_of(place) in header
