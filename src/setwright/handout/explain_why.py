"""Why an exercise is in the week: what it trains, and what would be short without it."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.anatomy.atlas import index, muscles, part
from setwright.audit.context import Context, Placed
from setwright.exercises import catalogue
from setwright.exercises.profile import Profile
from setwright.handout.explained import Said
from setwright.handout.wording import listed, number
from setwright.response.targets import bands
from setwright.sources.library import findings

# Shares from here on are worth a word; from MAIN on the exercise counts as a main one for a part.
WORTH_A_WORD, MAIN = 0.3, 0.7
# Share of a part's weekly sets from which an exercise carries the part.
CARRIES = 0.5
MOST_NAMED = 4
# What the big lifts are known to leave short, by movement pattern.
GAPS: dict[str, tuple[tuple[str, ...], str]] = {
    "squat": (("rectus-femoris", "gluteus-medius-posterior", "adductor-longus"),
              "practice-squat-gaps"),
    "hinge": (("biceps-femoris-short-head", "gluteus-medius-posterior", "adductor-longus"),
              "practice-hinge-gaps"),
}  # fmt: skip


def why(context: Context, item: Placed) -> list[Said]:
    """What the exercise trains, what it carries in this week, and what it leaves to others."""
    said = [_trains(item)]
    carried = _carries(context, item)
    if carried:
        said.append(carried)
    gap = _leaves(context, item)
    if gap:
        said.append(gap)
    return said


def muscle_words(idents: Iterable[str]) -> list[str]:
    """Parts as words: the muscle's name when all its trained parts are there."""
    chosen = list(idents)
    words: list[str] = []
    for ident in chosen:
        muscle = part(ident).muscle
        whole = [
            one for one in index() if part(one).muscle == muscle and part(one).trained_directly
        ]
        complete = len(whole) > 1 and all(one in chosen for one in whole)
        word = muscles()[muscle].name if complete else part(ident).name.replace(", ", " ")
        if word not in words:
            words.append(word)
    return words


def _trains(item: Placed) -> Said:
    profile = catalogue.profile(item.exercise.id)
    main = [one.part for one in profile.shares if one.value >= MAIN]
    help_ = [one.part for one in profile.shares if WORTH_A_WORD <= one.value < MAIN]
    name = item.exercise.name
    words = f"{name} trains {listed(muscle_words(main) or muscle_words(profile.limiting))}"
    if help_:
        helped = muscle_words(help_)
        shown = helped[:MOST_NAMED]
        words += f", and in part {listed(shown)}"
    words += f"; the set ends with {listed(muscle_words(profile.limiting))}."
    words += _stretch(profile)
    return Said("why", words, _of_profile(item, profile))


def _stretch(profile: Profile) -> str:
    if profile.loaded_stretch >= 0.5:
        return " It loads them where they are long."
    return ""


def _of_profile(item: Placed, profile: Profile) -> tuple[str, ...]:
    measured = [one.basis for one in profile.shares if one.basis in findings()]
    return tuple(dict.fromkeys([*measured, *item.exercise.findings, "practice-limiting-muscle"]))


def _carries(context: Context, item: Placed) -> Said | None:
    """The parts that get half of their weekly sets, or more, from here."""
    wanted = bands(context.intake)
    shares = context.shares(item)
    rows = []
    for ident, column in index().items():
        own = float(shares[column]) * item.entry.sets
        total = float(context.response.weekly_sets[column])
        if own >= 1 and wanted[ident].least > 0 and own >= CARRIES * total:
            rows.append((ident, own, total))
    if not rows:
        return None
    rows.sort(key=lambda row: row[2] - row[1])
    shown = rows[:MOST_NAMED]
    kept = {
        f"{number(round(total - own, 1))} of {number(round(total, 1))}" for _, own, total in rows
    }
    names = listed(muscle_words(ident for ident, _, _ in shown))
    if len(kept) == 1:
        words = f"Without it {names} would keep {kept.pop()} fractional sets a week."
    else:
        each = "; ".join(
            f"{part(ident).name.replace(', ', ' ')} {number(round(total - own, 1))} of "
            f"{number(round(total, 1))}"
            for ident, own, total in shown
        )
        words = f"Without it these would keep fewer fractional sets a week: {each}."
    return Said("why", words, ("weekly-volume-frequency-meta-regression-2024",))


def _leaves(context: Context, item: Placed) -> Said | None:
    """What a squat or a hinge leaves short, and which exercise of the week makes up for it."""
    if item.exercise.pattern not in GAPS:
        return None
    left, source = GAPS[item.exercise.pattern]
    shares = context.shares(item)
    short = [ident for ident in left if shares[index()[ident]] < WORTH_A_WORD]
    if not short:
        return None
    makers: dict[str, list[str]] = {}
    for ident in short:
        column = index()[ident]
        best = max(context.placed, key=lambda one: context.shares(one)[column] * one.entry.sets)
        if context.shares(best)[column] >= WORTH_A_WORD:
            makers.setdefault(best.exercise.name, []).append(ident)
    covered = [f"{name} for {listed(muscle_words(ids))}" for name, ids in makers.items()]
    open_ = [ident for ident in short if not any(ident in ids for ids in makers.values())]
    words = f"It leaves {listed(muscle_words(short))} short"
    words += f"; the week has {listed(covered)}." if covered else "."
    if open_ and covered:
        words += f" Nothing in the week makes up for {listed(muscle_words(open_))}."
    return Said("why", words, (source,))
