"""Steps of planning done once: a step that has the same key as before gives what it gave then.

A key is the digest of a step's name, of its inputs, of which rules there are, and of the code's version. What a
step gave is kept with the rules that it asked for, and is given again only where each of them is as it was. So it
is the same, byte for byte, whether a step is done or reused; the record of rules asked for is, too.
"""

import io
import pickle
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import Any, Protocol

from pydantic import BaseModel

from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.version import __version__


@dataclass(frozen=True, slots=True)
class Kept:
    """What a step gave, and the rules it asked for."""

    value: Any
    asked: tuple[RuleEntry, ...]


class Store(Protocol):
    """Keeps what steps gave; it may forget, and must give no other than was kept."""

    def find(self, key: str) -> Sequence[Kept]:
        """All that is kept under a key: the inputs were the same, the rules may have been others."""
        ...

    def keep(self, key: str, kept: Kept) -> None:
        """Keep what a step gave."""
        ...


class Steps:
    """Does the steps of a plan, reusing what a store keeps; without a store each is simply done.

    A step is a function of a module that depends on nothing but its arguments: frozen values, at most one set of
    rules, and `Steps` themselves. What it gives is shared, so nobody changes it.
    """

    def __init__(self, store: Store | None = None) -> None:
        self._store = store

    def __reduce__(self) -> tuple[type["Steps"], tuple[()]]:
        # Another process has no part in the store.
        return Steps, ()

    def do[**Given, Gives](self, step: Callable[Given, Gives], *args: Given.args, **kwargs: Given.kwargs) -> Gives:
        """Do a step, or give what it gave.

        Args:
            step: The function.
            args: What it is given.
            kwargs: The same by name.
        """
        if self._store is None:
            return step(*args, **kwargs)
        rules = next((value for value in (*args, *kwargs.values()) if isinstance(value, RuleSet)), None)
        key = self.key(step, *args, *sorted(kwargs.items()))
        found = self.kept(key, rules)
        if found is not None:
            given: Gives = found.value
            return given
        own = None if rules is None else rules.apart()

        def with_own(value: Any) -> Any:
            return own if value is rules else value

        gives = step(*map(with_own, args), **{name: with_own(value) for name, value in kwargs.items()})
        asked = () if own is None else own.noted()
        if rules is not None:
            rules.asked.update(entry.id for entry in asked)
        self.keep(key, Kept(gives, asked))
        return gives

    def key(self, step: Callable[..., Any], *inputs: object) -> str:
        """The key of a step with these inputs; of a set of rules only which rules there are is part of it."""
        if self._store is None:
            return ""
        return digest((__version__, step.__module__, step.__qualname__, inputs))

    def kept(self, key: str, rules: RuleSet | None) -> Kept | None:
        """What is kept under a key for rules as they are; the rules are asked for again."""
        for kept in () if self._store is None else self._store.find(key):
            if not kept.asked or (rules is not None and rules.still(kept.asked)):
                if rules is not None:
                    rules.asked.update(entry.id for entry in kept.asked)
                return kept
        return None

    def keep(self, key: str, kept: Kept) -> None:
        """Keep what a step gave, where there is a store."""
        if self._store is not None:
            self._store.keep(key, kept)


ONCE = Steps()
"""Each step is done."""


def digest(value: object) -> str:
    """SHA-256 over a value: the same for values that are the same, types and order included.

    Args:
        value: Plain values, data classes, models, shapes and collections of such, without cycles.
    """
    written = io.BytesIO()
    _Writer(written).dump(value)
    return sha256(written.getbuffer()).hexdigest()


class _Writer(pickle.Pickler):
    """Writes values alone: not which of them are one object, nor how a model was made."""

    def __init__(self, file: io.BytesIO) -> None:
        super().__init__(file, protocol=5)
        self.fast = True

    def reducer_override(self, value: Any) -> Any:
        if isinstance(value, BaseModel):
            return type(value), (tuple(value.__dict__.items()),)
        if isinstance(value, RuleSet):
            return RuleSet, (value.on, value.practice, value.ids_digest)
        if isinstance(value, Steps):
            return Steps, ()
        return NotImplemented
