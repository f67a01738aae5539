"""Criteria on small plans whose answer is known."""

from __future__ import annotations

from pathlib import Path

from setwright.audit.audit import AuditReport, audit
from setwright.audit.registry import registry
from setwright.audit.remark import Remark
from setwright.handout.remark_words import mend_words
from setwright.plan.intake import Intake
from setwright.plan.read import read_intake
from setwright.plan.week import Entry, Plan, Session
from setwright.sources.library import findings

EXAMPLE = Path(__file__).parents[2] / "examples" / "intake.yaml"


def entry(exercise: str, **changes: object) -> Entry:
    fields = {"sets": 3, "reps": (10, 10), "rir": (3, 1), "rest_s": (120, 180), **changes}
    return Entry.model_validate({"exercise": exercise, **fields})


def report(
    *entries: Entry, minutes: int | None = None, intake: Intake | None = None
) -> AuditReport:
    session = Session(name="Day", day="monday", minutes=minutes, exercises=entries)
    return audit(Plan(setwright="plan/1", title="One day", sessions=(session,)), intake)


def of(found: AuditReport, criterion: str) -> dict[str, Remark]:
    return {one.subject: one for one in found.remarks if one.criterion == criterion}


def lacking(found: AuditReport) -> set[str]:
    return {name.lower() for name, one in of(found, "coverage").items() if one.verdict != "holds"}


def names(found: set[str], words: str) -> bool:
    return any(words in name for name in found)


def test_a_squat_day_is_told_what_the_squat_leaves_out() -> None:
    left_out = lacking(report(entry("back-squat")))
    for words in (
        "rectus femoris",
        "gluteus medius",
        "gluteus minimus",
    ):
        assert names(left_out, words), words


def test_a_hinge_day_is_told_about_the_short_head() -> None:
    left_out = lacking(report(entry("romanian-deadlift")))
    for words in ("short head", "gluteus medius", "adductor longus"):
        assert names(left_out, words), words


def test_a_coverage_gap_closes_when_its_mend_is_done() -> None:
    before = of(report(entry("back-squat")), "coverage")
    subject = next(name for name in before if "rectus femoris" in name.lower())
    mend = before[subject].mend
    assert mend is not None and mend.kind == "add exercise" and mend.amount is not None
    added = entry(mend.target, sets=int(mend.amount), rir=(1, 0))
    after = of(report(entry("back-squat"), added), "coverage")[subject]
    assert after.figure is not None and before[subject].figure is not None
    assert after.figure > before[subject].figure


def test_a_free_bench_press_alone_stays_short_of_failure() -> None:
    alone = read_intake(EXAMPLE.read_text(encoding="utf-8"), EXAMPLE.name)
    assert alone.setting == "alone"
    failing, short = entry("barbell-bench-press", rir=(1, 0)), entry("barbell-bench-press")
    (missed,) = of(report(failing, intake=alone), "effort-caps").values()
    assert (missed.verdict, missed.figure, missed.low) == ("misses", 0, 2)
    kept = short.model_copy(update={"rir": (3.0, 2.0)})
    (held,) = of(report(kept, intake=alone), "effort-caps").values()
    assert held.verdict == "holds"
    helped = alone.model_copy(update={"setting": "with a partner or staff"})
    assert of(report(failing, intake=helped), "effort-caps") == {}


def test_a_session_longer_than_its_minutes_misses() -> None:
    work = (entry("back-squat", sets=6), entry("leg-extension", sets=6))
    (over,) = of(report(*work, minutes=10), "time").values()
    (under,) = of(report(*work, minutes=120), "time").values()
    assert (over.verdict, under.verdict) == ("misses", "holds")
    assert over.figure == under.figure


def test_a_superset_of_one_muscle_misses() -> None:
    same = report(entry("seated-leg-curl", superset="A"), entry("lying-leg-curl", superset="A"))
    apart = report(entry("seated-leg-curl", superset="A"), entry("leg-extension", superset="A"))
    assert [one.verdict for one in of(same, "supersets").values()] == ["misses"]
    assert [one.verdict for one in of(apart, "supersets").values()] == ["holds"]


def test_evidence_of_every_criterion_can_be_looked_up() -> None:
    known = {*findings(), "common practice"}
    assert {one for item in registry() for one in item.evidence} <= known


def test_evidence_of_every_remark_can_be_looked_up() -> None:
    found = report(entry("barbell-bench-press", rir=(1, 0)), entry("back-squat"), minutes=20)
    assert {one for remark in found.remarks for one in remark.evidence} <= set(findings())


def person() -> Intake:
    return read_intake(EXAMPLE.read_text(encoding="utf-8"), EXAMPLE.name)


def test_symptoms_without_clearance_miss_and_clearance_mends_it() -> None:
    intake = person()
    asked = intake.screening.model_copy(update={"symptoms": True, "clearance": False})
    cleared = asked.model_copy(update={"clearance": True})
    for answers, verdict in ((asked, "misses"), (cleared, "holds")):
        changed = intake.model_copy(update={"screening": answers})
        found = of(report(entry("leg-extension"), intake=changed), "screening")
        assert found["week"].verdict == verdict


def test_isolation_before_a_compound_on_the_same_parts_costs_more() -> None:
    def lost(*work: Entry) -> Remark:
        return of(report(*work), "order")["back-squat on monday"]

    tired = lost(entry("leg-extension", sets=5, rir=(0, 0)), entry("back-squat"))
    fresh = lost(entry("seated-calf-raise", sets=5, rir=(0, 0)), entry("back-squat"))
    assert tired.figure is not None and fresh.figure is not None
    assert tired.figure > fresh.figure
    assert of(report(entry("back-squat"), entry("leg-extension")), "order") == {}


def test_an_exercise_done_twice_in_a_day_is_told_apart() -> None:
    found = report(entry("back-squat"), entry("back-squat"))
    assert set(of(found, "rep-range")) == {
        "back-squat on monday",
        "back-squat on monday, again (2)",
    }
    subjects = [(one.criterion, one.subject) for one in found.remarks]
    assert len(subjects) == len(set(subjects))


def mend_of(found: AuditReport, criterion: str) -> str:
    (remark,) = (one for one in of(found, criterion).values() if one.mend is not None)
    assert remark.mend is not None
    return mend_words(remark.mend)


def test_a_lowering_that_is_dropped_is_to_take_longer_and_nothing_else() -> None:
    def said(lowering_s: float, lifting_s: float) -> str:
        tempo = {"lowering_s": lowering_s, "lifting_s": lifting_s}
        return mend_of(report(entry("back-squat", tempo=tempo)), "tempo")

    assert said(0.5, 2) == "take 0.5 s longer to lower on Back squat"
    assert said(1, 0.96) == "change the tempo of Back squat by +0.04 s, which brings it to 2"


def test_isolations_are_raised_by_whole_repetitions() -> None:
    squats = [entry("back-squat", reps=(8, 8)) for _ in range(3)]
    curls = [entry("lying-leg-curl", reps=(reps, reps)) for reps in (8, 8, 8, 8, 7)]
    said = mend_of(report(*squats, *curls), "compound-heavier")
    assert said == "raise the band of isolations of Day by 1 repetition, which brings it to 0.8"


def test_an_excess_that_is_not_shown_is_not_complained_of() -> None:
    held = of(report(entry("dumbbell-curl", sets=12)), "session-volume")["biceps"]
    assert (held.verdict, held.figure, held.high) == ("holds", 11.0, 11.0)
    over = of(report(entry("dumbbell-curl", sets=13)), "session-volume")["biceps"]
    assert over.verdict == "close" and over.mend is not None
    assert mend_words(over.mend) == "move 1 set of biceps to another day"
