"""The columns of the board to scale: minutes down, marks for warm-up and working sets."""

from __future__ import annotations

from collections.abc import Iterable

from django.utils.safestring import SafeString, mark_safe

from setwright.handout.timeline import Block, Lane, Span

# Height of a minute, in the size of the text, so that larger text makes a taller board.
REM_A_MINUTE = 0.55
# A mark of the scale every so many minutes.
TICK_MIN = 10
_WIDE = 10
# Height of a line of a block's text, as the style sheet has it.
LINE_REM = 0.9


def rem(seconds: float) -> str:
    """A length of time as a height: ``4.4rem``."""
    return f"{seconds / 60 * REM_A_MINUTE:.2f}rem"


def lines_in(seconds: float) -> int:
    """Lines of text that fit into a block, three at most counted."""
    return max(min(int((seconds / 60 * REM_A_MINUTE - 0.1) / LINE_REM), 3), 1)


def strip(block: Block, lane: Lane) -> SafeString:
    """One exercise of a block as SVG: its sets where they fall in the block's time.

    Height in seconds of the block; the marks of one kind are one path.
    """
    whole = block.whole.end_s - block.whole.start_s
    start = block.whole.start_s
    before = Span(start, block.opens_s)
    # Nothing but figures goes in.
    return mark_safe(
        f'<svg class="strip" height="{rem(whole)}" viewBox="0 0 {_WIDE} {whole:.0f}" '
        f'preserveAspectRatio="none" aria-hidden="true" focusable="false">'
        f'<path class="change" d="{_path([before], start)}"/>'
        f'<path class="warm" d="{_path(lane.warm_up, start)}"/>'
        f'<path class="set" d="{_path(lane.sets, start)}"/></svg>'
    )


def _path(spans: Iterable[Span], start: float) -> str:
    return "".join(
        f"M0 {span.start_s - start:.0f}h{_WIDE}v{max(span.end_s - span.start_s, 1):.0f}H0z"
        for span in spans
    )


def ticks(longest_min: float) -> list[int]:
    """Minutes of the scale, from 0 to beyond the longest session."""
    return list(range(0, int(longest_min) + TICK_MIN, TICK_MIN))


def bar(sets: float, least: float, good: float, most: float, scale: float) -> SafeString:
    """A part's dose as SVG: the bar, the band it is meant to be in, and the sound dose in it."""
    at = 100 / scale
    band = (
        f'<path class="band" d="M{least * at:.1f} 0h{(most - least) * at:.1f}v10h'
        f'{-(most - least) * at:.1f}z"/><path class="good" d="M{good * at:.1f} 0v10"/>'
        if least
        else ""
    )
    return mark_safe(
        f'<svg class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" '
        f'focusable="false">{band}'
        f'<path class="dose" d="M0 3h{min(sets * at, 100):.1f}v4H0z"/></svg>'
    )
