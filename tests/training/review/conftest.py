"""A client's folder and a log made by hand: every figure in it is chosen, none drawn."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from pathlib import Path
from uuid import NAMESPACE_OID, uuid5

import pytest

from setwright.plan.client_folder import ClientFolder, open_folder
from setwright.plan.intake import DAYS, Intake, Screening, TrainingDay
from setwright.plan.log import Missed, Pain, Record, SetRecord
from setwright.plan.log_store import append_records
from setwright.plan.symptoms import Symptom
from setwright.plan.week import Entry, Plan, Session
from setwright.plan.write import write_intake, write_plan
from setwright.training.facts.week import Facts
from setwright.training.review import Review, review

FIRST = date(2026, 9, 7)
LOADS = {
    "leg-press": 120.0, "seated-leg-curl": 45.0, "lat-pulldown": 50.0, "machine-chest-press": 45.0,
    "seated-cable-row": 50.0, "leg-extension": 40.0, "cable-curl": 20.0, "cable-pushdown": 22.5,
}  # fmt: skip


def entry(exercise: str, sets: int = 3) -> Entry:
    return Entry(exercise=exercise, sets=sets, reps=(8, 12), rir=(2, 1), rest_s=(120, 150))


def plan() -> Plan:
    """Two sessions a week for Ilse, who is invented."""
    return Plan(
        setwright="plan/1",
        title="Ilse's week",
        person="Ilse",
        sessions=(
            Session(
                name="First", day="monday", minutes=75,
                exercises=tuple(map(entry, ("leg-press", "lat-pulldown", "machine-chest-press",
                                            "seated-leg-curl"))),
            ),
            Session(
                name="Second", day="thursday", minutes=75,
                exercises=tuple(map(entry, ("leg-extension", "seated-cable-row",
                                            "machine-chest-press", "cable-curl"))),
            ),
        ),
    )  # fmt: skip


def intake(**changes: object) -> Intake:
    fields: dict[str, object] = {
        "setwright": "intake/1",
        "name": "Ilse",
        "experience": "intermediate",
        "age_band": "18-39",
        "body_mass_kg": 70.0,
        "screening": Screening(active_last_3_months=True, known_disease=False, symptoms=False),
        "setting": "with a partner or staff",
        "days": (
            TrainingDay(day="monday", minutes=75),
            TrainingDay(day="thursday", minutes=75),
            TrainingDay(day="saturday", minutes=75),
        ),
        "gym": "full gym",
    }
    return Intake.model_validate({**fields, **changes})


@dataclass
class Story:
    """Weeks of training in a folder on the disk."""

    path: Path
    plan: Plan = field(default_factory=plan)
    intake: Intake = field(default_factory=intake)
    records: list[Record] = field(default_factory=list)

    def at(self, week: int, day: str, minute: int) -> datetime:
        on = FIRST + timedelta(7 * week + DAYS.index(day))
        return datetime.combine(on, datetime.min.time()) + timedelta(minutes=18 * 60 + minute)

    def id(self, *what: object) -> str:
        return str(uuid5(NAMESPACE_OID, repr((what, len(self.records)))))

    def week(
        self,
        number: int,
        gain: float = 0.004,
        pain: Mapping[str, int] | None = None,
        symptoms: Mapping[str, tuple[Symptom, ...]] | None = None,
        missed: tuple[str, ...] = (),
        flat: tuple[str, ...] = (),
        falling: Mapping[str, float] | None = None,
        drop: Mapping[str, int] | None = None,
        failure_reps: int | None = None,
    ) -> Story:
        """One week done as planned, but for what is said otherwise."""
        for session in self.plan.sessions:
            if session.name in missed:
                self.records.append(
                    Missed(id=self.id(number, session.name), at=self.at(number, session.day, 0),
                           session=session.name, reason="no time")
                )  # fmt: skip
                continue
            minute = 0
            for planned in session.exercises:
                name = planned.exercise
                rise = 0.0 if name in flat else gain
                rise = (falling or {}).get(name, rise)
                load = LOADS[name] * (1 + rise) ** number
                for place in range(planned.sets):
                    minute += 3
                    last = place == planned.sets - 1
                    reps = 10 - (drop or {}).get(name, 0) * place
                    to_failure = last and failure_reps is not None
                    level = (pain or {}).get(name, 0)
                    self.records.append(
                        SetRecord(
                            id=self.id(number, session.name, name, place),
                            at=self.at(number, session.day, minute),
                            exercise=name,
                            load_kg=round(load, 2),
                            reps=failure_reps if to_failure and failure_reps else reps,
                            rir=0 if to_failure else 2,
                            to_failure=to_failure,
                            rest_s=None if place == 0 else 135,
                            pain=Pain(where="knee", level=level) if level and last else None,
                            symptoms=(symptoms or {}).get(name, ()) if last else (),
                        )
                    )
                minute += 3
        return self

    def weeks(self, count: int, **how: object) -> Story:
        for number in range(count):
            self.week(number, **how)  # type: ignore[arg-type]
        return self

    def folder(self) -> ClientFolder:
        """Everything written to the disk, and read from it."""
        (self.path / "plans").mkdir(parents=True, exist_ok=True)
        (self.path / "intake.yaml").write_text(write_intake(self.intake), encoding="utf-8")
        first = self.path / "plans" / f"{FIRST.isoformat()}.yaml"
        if not first.is_file():
            first.write_text(write_plan(self.plan), encoding="utf-8")
        append_records(self.path / "log.jsonl", self.records)
        return open_folder(self.path)

    def review(self, week: int) -> Review:
        return review(self.folder(), FIRST + timedelta(7 * week))

    def facts(self, week: int) -> Facts:
        return self.review(week).facts


@pytest.fixture
def story(tmp_path: Path) -> Callable[..., Story]:
    def make(**changes: object) -> Story:
        # Each story begins with an empty folder.
        shutil.rmtree(tmp_path / "ilse", ignore_errors=True)
        return Story(tmp_path / "ilse", **changes)  # type: ignore[arg-type]

    return make
