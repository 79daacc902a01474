"""The message files: what the house says, by code, in one tongue and in the words of one practice."""

from collections.abc import Callable, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from fluent.runtime import FluentBundle, FluentResource, resolver
from fluent.syntax.ast import Resource

from firstcourse.tongues import TONGUES

_BRITISH = ("uk", "au")
_LONGEST = 1_000_000
"""Characters that one value may have: a floor with many members to add says each of them.

The library's own limit guards against message files of strangers; these are ours.
"""
resolver.MAX_PART_LENGTH = _LONGEST


class MissingWordsError(LookupError):
    """A message is not there, or cannot be said with what it was given: a fault of ours, never of the job."""


class Messages:
    """Every message of one tongue; a file is read when something of its subject is first said.

    A message's file is named by what stands before the first hyphen of its id: `SUI-603` stands in `sui.ftl`. What
    `sui-shared` has as attributes, every message of that file has that does not have its own.

    Args:
        tongue: Such as `en`.
        practice: Whose trade words: `us`, `uk` or `au`.
        functions: What may be called within a message, by name.

    Raises:
        MissingWordsError: Nothing is written in that tongue.
    """

    def __init__(self, tongue: str, practice: str, functions: Mapping[str, Callable[..., Any]]) -> None:
        if tongue not in TONGUES:
            raise MissingWordsError(f"no messages in '{tongue}'")
        self.tongue, self._practice = tongue, practice
        self._functions = dict(functions)
        self._bundles: dict[str, FluentBundle | None] = {}

    def has(self, message: str, attribute: str = "") -> bool:
        """Whether a message is there, and the attribute of it that is named."""
        bundle = self._bundle(message)
        if bundle is None or not bundle.has_message(message):
            return False
        return not attribute or attribute in self._attributes(bundle, message)

    def attributes(self, message: str) -> tuple[str, ...]:
        """Names of a message's attributes, in their order; none where it is not there."""
        bundle = self._bundle(message)
        return tuple(self._attributes(bundle, message)) if bundle is not None and self.has(message) else ()

    def say(self, message: str, attribute: str = "", /, **values: Any) -> str:
        """One message, or one attribute of it, with values put in.

        Raises:
            MissingWordsError: It is not there, or a value that it asks for is not given.
        """
        name = f"{message}.{attribute}" if attribute else message
        bundle = self._bundle(message)
        if bundle is None or not self.has(message, attribute):
            raise MissingWordsError(f"no message '{name}' in '{self.tongue}'")
        pattern = self._attributes(bundle, message)[attribute] if attribute else bundle.get_message(message).value
        if pattern is None:
            raise MissingWordsError(f"message '{name}' in '{self.tongue}' says nothing")
        text, faults = bundle.format_pattern(pattern, values)
        if faults:
            raise MissingWordsError(f"message '{name}' in '{self.tongue}' cannot be said: {faults[0]!r}")
        return str(text)

    @staticmethod
    def _attributes(bundle: FluentBundle, message: str) -> dict[str, Any]:
        """A message's attributes, and those that its file says of all as attributes of `<file>-shared`."""
        shared = f"{message.partition('-')[0].lower()}-shared"
        of_all = bundle.get_message(shared).attributes if bundle.has_message(shared) else {}
        return {**of_all, **bundle.get_message(message).attributes}

    def _bundle(self, message: str) -> FluentBundle | None:
        subject = message.partition("-")[0].lower()
        if subject not in self._bundles:
            self._bundles[subject] = self._read(subject)
        return self._bundles[subject]

    def _read(self, subject: str) -> FluentBundle | None:
        resource = _resource(self.tongue, subject)
        if resource is None:
            return None
        bundle = FluentBundle([self.tongue], functions=self._functions, use_isolating=False)
        side = "uk" if self._practice in _BRITISH else "us"
        for terms in (_resource(self.tongue, f"terms.{side}"), resource):
            if terms is not None:
                bundle.add_resource(terms)
        return bundle


@cache
def _resource(tongue: str, name: str) -> Resource | None:
    file = files("firstcourse.words") / "texts" / tongue / f"{name}.ftl"
    return FluentResource(file.read_text(encoding="utf-8")) if file.is_file() else None
