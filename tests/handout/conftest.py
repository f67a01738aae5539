"""An invented week that uses everything a plan can say."""

from __future__ import annotations

import pytest

from setwright.plan.intake import Aims, Avoidance, Intake, KnownLoad, Screening, TrainingDay
from setwright.plan.week import Entry, Plan, Session, Tempo
from setwright.rehearsal.model import Rehearsal
from setwright.rehearsal.rehearse import rehearse


@pytest.fixture(scope="session")
def plan() -> Plan:
    return Plan(
        setwright="plan/1",
        title="Ilka: two evenings in the old mill",
        person="Ilka",
        sessions=(
            Session(
                name="Squat day",
                day="monday",
                minutes=45,
                exercises=(
                    Entry(
                        exercise="back-squat", sets=3, reps=(5, 8), rir=(3, 1), rest_s=(150, 180)
                    ),
                    Entry(
                        exercise="leg-extension",
                        sets=3,
                        reps=(10, 15),
                        rir=(1, 0),
                        rest_s=(90, 90),
                        superset="A",
                    ),
                    Entry(
                        exercise="seated-leg-curl",
                        sets=3,
                        reps=(10, 15),
                        rir=(1, 0),
                        rest_s=(90, 90),
                        superset="A",
                        partials="after the last set",
                    ),
                    Entry(
                        exercise="cable-side-bend",
                        sets=2,
                        reps=(12, 15),
                        rir=(1, 0),
                        rest_s=(60, 60),
                        note="slow on the way down",
                    ),
                ),
            ),
            Session(
                name="Hinge day",
                day="thursday",
                exercises=(
                    Entry(
                        exercise="romanian-deadlift",
                        sets=3,
                        reps=(6, 10),
                        rir=(3, 1),
                        rest_s=(120, 180),
                        tempo=Tempo(lowering_s=3, stretched_s=1, lifting_s=1),
                    ),
                    Entry(
                        exercise="hip-abduction-machine",
                        sets=2,
                        reps=(12, 20),
                        rir=(1, 0),
                        rest_s=(45, 75),
                    ),
                    Entry(
                        exercise="standing-calf-raise",
                        sets=1,
                        reps=(8, 8),
                        rir=(0, 0),
                        rest_s=(90, 90),
                    ),
                ),
            ),
        ),
    )


@pytest.fixture(scope="session")
def intake() -> Intake:
    return Intake(
        setwright="intake/1",
        name="Ilka",
        experience="intermediate",
        age_band="40-59",
        body_mass_kg=70,
        screening=Screening(active_last_3_months=True, high_blood_pressure=True),
        setting="alone",
        days=(TrainingDay(day="monday", minutes=45), TrainingDay(day="thursday", minutes=45)),
        aims=Aims(emphasise=("glutes",), maintain=("calves",)),
        gym="full gym",
        avoid=(Avoidance(pattern="vertical press", reason="pain"),),
        known_loads=(KnownLoad(exercise="romanian-deadlift", load_kg=70, reps=8, rir=2),),
    )


@pytest.fixture(scope="session")
def rehearsal(plan: Plan, intake: Intake) -> Rehearsal:
    return rehearse(plan, intake)
