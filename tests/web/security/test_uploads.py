"""What is sent is bounded, whatever it says it is."""

import io
import zipfile

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile

from setwright.web.models import Client


def sent(as_coach, data, name="a.zip"):
    return as_coach.post("/clients/import", {"file": SimpleUploadedFile(name, data)})


def zipped(**files):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in files.items():
            archive.writestr(name.replace("__", "/").replace("_", "."), text)
    return out.getvalue()


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"no zip",
        b"PK\x03\x04",
        zipped(other_txt="x"),
        zipped(intake_yaml="setwright: intake/1\n"),
        zipped(intake_yaml="x" * 30_000_000),
        b"x" * 5_500_000,
    ],
    ids=["empty", "text", "cut", "no intake", "bad intake", "bomb", "large"],
)
def test_an_archive_at_fault_is_refused_with_words_and_nothing_is_kept(as_coach, data):
    answer = sent(as_coach, data)
    assert answer.status_code == 422
    assert 'class="error"' in answer.content.decode()
    assert Client.objects.count() == 0


def test_a_body_beyond_the_bound_is_refused_before_it_is_read(as_coach):
    answer = as_coach.post("/clients/add", {"name": "x" * 7_000_000})
    assert answer.status_code == 400


def test_too_many_fields_are_refused(as_coach):
    fields = {f"field{number}": "x" for number in range(2500)}
    assert as_coach.post("/clients/add", fields).status_code == 400
