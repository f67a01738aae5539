"""Records arrive once, whoever sends them and however often."""

import json
from uuid import UUID

from setwright.plan.log_store import RECORDS
from setwright.web.engine.append import append_records
from setwright.web.engine.folder import folder_of


def ident(number):
    return str(UUID(int=number + (4 << 76) + (8 << 60)))


def done(number, **more):
    base = {
        "kind": "set",
        "id": ident(number),
        "at": "2026-09-07T18:00:00",
        "exercise": "back-squat",
        "load_kg": 100.0,
        "reps": 5,
    }
    return base | more


def kept(person):
    return list(person.log.values_list("record_id", flat=True))


def test_records_are_kept_in_the_order_sent_and_the_engine_reads_them(person):
    appended = append_records(person, [done(1), done(2)], person.account)
    assert appended.accepted == (ident(1), ident(2))
    assert kept(person) == [ident(1), ident(2)]
    assert folder_of(person).log.sets()[0].load_kg == 100


def test_the_same_record_sent_again_is_known_and_kept_once(person):
    append_records(person, [done(1)], person.account)
    appended = append_records(person, [done(1), done(2)], person.account)
    assert appended.known == (ident(1),)
    assert appended.accepted == (ident(2),)
    assert len(kept(person)) == 2


def test_another_record_of_the_same_id_is_refused_and_the_first_stays(person):
    append_records(person, [done(1)], person.account)
    appended = append_records(person, [done(1, reps=6)], person.account)
    assert appended.refused[0].id == ident(1)
    assert json.loads(person.log.get().text)["reps"] == 5


def test_one_at_fault_does_not_hold_up_the_others_and_says_why(person):
    sent = [
        done(1, reps=900),
        "no record",
        {"kind": "set"},
        done(2),
        done(3, at="9999-01-01T00:00"),
    ]
    appended = append_records(person, sent, person.account)
    assert appended.accepted == (ident(2),)
    assert [one.position for one in appended.refused] == [0, 1, 2, 4]
    assert "reps" in appended.refused[0].why[0]
    assert "2100" in appended.refused[3].why[0]


def test_the_same_id_of_another_client_is_another_record(person, practice, coach):
    from setwright.web.models import Client

    other = Client.objects.create(organisation=practice, coach=coach, name="Per")
    append_records(person, [done(1)], person.account)
    assert append_records(other, [done(1)], coach).accepted == (ident(1),)


def test_records_made_in_memory_go_the_same_way(person):
    record = RECORDS.validate_python(done(1))
    assert append_records(person, [record], None).accepted == (ident(1),)
    assert append_records(person, [done(1)], None).known == (ident(1),)
