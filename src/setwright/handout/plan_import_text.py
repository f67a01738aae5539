"""What an import understood, line by line, and what needs attention."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.exercises.catalogue import exercise, ids
from setwright.handout.wording import counted, folded, listed
from setwright.plan.foreign.form import FormReading
from setwright.plan.foreign.model import Piece, Reading

WIDTH = 100


def counts_text(reading: Reading) -> str:
    """How many pieces were understood, and how many need attention."""
    asked, waiting = len(reading.attention), len(reading.waiting)
    understood = len(reading.pieces) - asked - waiting
    said = f"{counted(len(reading.pieces), 'piece')} read: {understood} understood"
    if waiting:
        said += f", {waiting} waiting for another"
    said += f", {asked} in need of attention."
    if reading.plan is None:
        return f"{said} No exercise is surely understood: there is no plan."
    sessions = len(reading.plan.sessions)
    exercises = sum(len(session.exercises) for session in reading.plan.sessions)
    return (
        f"{said} The plan has {counted(sessions, 'session')} with {counted(exercises, 'exercise')}."
    )


def attention_text(reading: Reading) -> str:
    """The list of what needs attention, with how to answer it."""
    if not reading.attention:
        return f"{reading.name}: nothing needs attention."
    first = reading.attention[0]
    lines = [
        f"{reading.name}: needs attention ({len(reading.attention)})",
        f"Answer with --answer PLACE=WORDS, for example --answer '{first.place}=skip', or mend the "
        "file.",
        "",
    ]
    for piece in reading.attention:
        lines += _asked(piece)
    if reading.waiting:
        places = list(dict.fromkeys(piece.row for piece in reading.waiting))
        told = "is" if len(places) == 1 else "are"
        lines += ["", folded(f"{listed(places)} {told} left out until that is answered.", WIDTH)]
    return "\n".join(lines)


def _asked(piece: Piece) -> list[str]:
    told = f"{piece.place}: {' '.join(piece.text.split())!r}: {piece.why} [{piece.meaning}]"
    lines = [folded(told, WIDTH, subsequent_indent="    ")]
    if piece.candidates:
        names = "; ".join(candidate_words(one) for one in piece.candidates)
        lines.append(folded(f"    perhaps: {names}", WIDTH, subsequent_indent="    "))
    return lines


def question_text(piece: Piece) -> str:
    """A question to be asked on a terminal."""
    lines = [f"{piece.place}: {' '.join(piece.text.split())}", f"  {piece.why}"]
    lines += [
        f"  {number}  {candidate_words(one)}" for number, one in enumerate(piece.candidates, 1)
    ]
    return "\n".join(lines)


def candidate_words(candidate: str) -> str:
    """A candidate by name."""
    return exercise(candidate).name if candidate in ids() else candidate


def for_machines(reading: Reading) -> dict[str, object]:
    """The reading as data."""
    pieces: Sequence[Piece] = reading.pieces
    return {
        "file": reading.name,
        "pieces": pieces,
        "needs_attention": reading.attention,
        "waiting": reading.waiting,
        "counts": {
            kind: reading.count(kind)
            for kind in dict.fromkeys(piece.kind for piece in reading.pieces)
        },
        "plan": reading.plan,
    }


def form_text(reading: FormReading, only_attention: bool = False) -> str:
    """What was understood of a form, or only what is in doubt."""
    pieces = reading.attention if only_attention else reading.pieces
    lines = [f"{reading.name}: {'in doubt' if only_attention else 'what was understood'}", ""]
    for piece in pieces:
        mark = "?" if piece.kind == "attention" else " "
        why = f" ({piece.why})" if piece.why else ""
        text = " ".join(piece.text.split())
        told = f"{mark} {piece.place} {piece.confidence:.2f} {text!r}: {piece.meaning}{why}"
        lines.append(folded(told, WIDTH, subsequent_indent="    "))
    done = "An intake was made." if reading.intake is not None else "No intake could be made."
    asked = len(reading.attention)
    return "\n".join([*lines, "", f"{done} In doubt: {asked}; answer with --answer PLACE=WORDS."])
