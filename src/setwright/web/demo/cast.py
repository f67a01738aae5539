"""The invented people of the demo, and how far each has come."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.plan.symptoms import Symptom

State = Literal["no intake", "intake", "draft", "sent"]

ORGANISATION = "The Old Ferry Boathouse"
OWNER = "Runa"
EMAIL = "runa@example.org"
ON_THE_PHONE = "tove"


@dataclass(frozen=True)
class Part:
    """What one client has behind them.

    Attributes:
        name: of the intake's file as well.
        state: how far planning has come.
        weeks: whole weeks trained before this one.
        seed: of what the virtual lifter does.
        away: weeks just past without any session.
        missed: sessions missed in the last week, by word.
        pain: exercise id, where and level, 0 to 10, in the last session that had it.
        symptom: that ended the last session.
        running: whether this week was sent.
        decided: whether last week was reviewed and this week planned from it.
        archived: whether coaching has ended.
        notes: the coach's.
    """

    name: str
    state: State = "sent"
    weeks: int = 0
    seed: int = 1
    away: int = 0
    missed: int = 0
    pain: tuple[str, str, int] | None = None
    symptom: Symptom | None = None
    running: bool = False
    decided: bool = False
    archived: bool = False
    notes: str = ""


CAST = (
    Part(
        "tove",
        weeks=7,
        seed=1,
        running=True,
        notes="Likes to know why. Wants to row the fjord in June.",
    ),
    Part("mateo", weeks=8, seed=2, notes="Runs on Sundays."),
    Part("ines", weeks=6, seed=3, decided=True),
    Part("tomas", weeks=8, seed=4, running=True),
    Part("leila", weeks=5, seed=5, pain=("machine-pullover", "left shoulder", 6)),
    Part("ebbe", weeks=4, seed=6, symptom="dizziness"),
    Part("noor", weeks=4, seed=7, missed=2),
    Part("sanna", weeks=6, seed=8, away=2),
    Part("oona"),
    Part("kwame", "draft"),
    Part("gerda", "intake", notes="Sees the heart clinic on Thursday and will bring a note."),
    Part("eskil", "no intake", notes="Came through Mateo. First talk on Saturday."),
    Part("yusra", weeks=5, seed=9, away=4, archived=True),
)
