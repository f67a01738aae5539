"""Who saw and changed what, for those it concerns."""

from setwright.web import trail


def test_the_trail_of_a_client_tells_who_saw_what(as_coach, person, coach):
    as_coach.get(f"/clients/{person.uuid}")
    page = as_coach.get(f"/clients/{person.uuid}/trail").content.decode()
    assert coach.name in page
    assert "saw" in page


def test_the_owner_reads_the_whole_trail_and_only_of_the_own_organisation(client, owner, person):
    from setwright.web.models import Account, Client, Organisation

    trail.note("share link", person, "saw", "week one")
    elsewhere = Organisation.objects.create(name="Quarry Hall")
    other = Account.objects.create(organisation=elsewhere, role="coach", name="Kit")
    theirs = Client.objects.create(organisation=elsewhere, coach=other, name="Nils")
    trail.note(other, theirs, "saw", "something of Nils")
    client.force_login(owner)
    page = client.get("/trail").content.decode()
    assert "week one" in page
    assert "Oda" in page
    assert "Nils" not in page


def test_a_long_trail_comes_in_pages(as_coach, person):
    for number in range(130):
        trail.note("share link", person, "saw", f"number {number:03}")
    first = as_coach.get(f"/clients/{person.uuid}/trail").content.decode()
    second = as_coach.get(f"/clients/{person.uuid}/trail?page=2").content.decode()
    assert "number 129" in first
    assert "number 010" in second
    assert as_coach.get(f"/clients/{person.uuid}/trail?page=nine").status_code == 200
