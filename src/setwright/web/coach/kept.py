"""Answers of the engine kept as long as what they were computed from stays the same."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from threading import Lock
from typing import Generic, TypeVar

T = TypeVar("T")


class Kept(Generic[T]):
    """The last answers, by the content they stand on; the one least asked for goes first."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._answers: OrderedDict[Hashable, T] = OrderedDict()
        self._lock = Lock()

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
