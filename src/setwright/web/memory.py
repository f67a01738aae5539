"""Answers kept in memory, all of which can be let go of at once: an erased person is in some."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from functools import lru_cache
from threading import Lock
from typing import TYPE_CHECKING, Generic, TypeVar

if TYPE_CHECKING:
    from functools import _lru_cache_wrapper

T = TypeVar("T")

_LET_GO: list[Callable[[], None]] = []


def held(most: int) -> Callable[[Callable[..., T]], _lru_cache_wrapper[T]]:
    """Keep the answers of a function, as ``lru_cache`` does, until they are forgotten.

    Args:
        most: answers to keep.
    """

    def keep(function: Callable[..., T]) -> _lru_cache_wrapper[T]:
        kept = lru_cache(most)(function)
        _LET_GO.append(kept.cache_clear)
        return kept

    return keep


def forget() -> None:
    """Let go of every answer."""
    for let_go in _LET_GO:
        let_go()


class Kept(Generic[T]):
    """The last answers, by the content they stand on; the one least asked for goes first."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._answers: OrderedDict[Hashable, T] = OrderedDict()
        self._lock = Lock()
        _LET_GO.append(self.clear)

    def known(self, key: Hashable) -> T | None:
        """An answer, if it is there."""
        with self._lock:
            if key not in self._answers:
                return None
            self._answers.move_to_end(key)
            return self._answers[key]

    def of(self, key: Hashable, compute: Callable[[], T]) -> T:
        """An answer, computed when it is not there. Two may compute the same one at a time."""
        found = self.known(key)
        if found is None:
            found = compute()
            with self._lock:
                self._answers[key] = found
                while len(self._answers) > self._most:
                    self._answers.popitem(last=False)
        return found

    def clear(self) -> None:
        """Forget everything."""
        with self._lock:
            self._answers.clear()
