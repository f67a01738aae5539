"""The criteria a plan is held against. One criterion is one small module in `criteria`."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from setwright.audit import criteria
from setwright.audit.context import Context
from setwright.audit.remark import Remark

Check = Callable[[Context], Iterable[Remark]]


@dataclass(frozen=True)
class Criterion:
    """A criterion of the audit.

    Attributes:
        id: short id, for example ``weekly-volume``.
        title: what it asks, in one plain phrase.
        evidence: ids of findings it stands on, or ``common practice``.
        check: gives the remarks on a plan.
    """

    id: str
    title: str
    evidence: tuple[str, ...]
    check: Check


_REGISTRY: dict[str, Criterion] = {}


def criterion(ident: str, title: str, evidence: tuple[str, ...]) -> Callable[[Check], Check]:
    """Register the decorated check as a criterion; an id can be taken only once."""

    def register(check: Check) -> Check:
        if ident in _REGISTRY:
            raise ValueError(f"two criteria are called {ident!r}")
        _REGISTRY[ident] = Criterion(ident, title, evidence, check)
        return check

    return register


@cache
def registry() -> tuple[Criterion, ...]:
    """Every criterion, in the order of the module names, whoever imported one first."""
    for module in sorted(found.name for found in iter_modules(criteria.__path__)):
        import_module(f"{criteria.__name__}.{module}")
    return tuple(sorted(_REGISTRY.values(), key=lambda one: one.check.__module__))
