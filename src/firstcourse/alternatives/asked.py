"""Read a document of alternatives: each a name and a list of changes to the job document."""

from collections.abc import Iterator
from typing import Annotated, Any

import yaml
from pydantic import BeforeValidator, ConfigDict, Field, ValidationError

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.files import utf8_text
from firstcourse.plan import Frozen
from firstcourse.units import printable

LARGEST_BYTES = 200_000
_Path = tuple[str | int, ...]


def _one_line(value: Any) -> Any:
    if isinstance(value, str) and (not value.strip() or printable(value) != value or "\n" in value):
        raise ValueError("must be one line that can be printed")
    return value


Line = Annotated[str, BeforeValidator(_one_line), Field(min_length=1, max_length=60)]


class Change(Frozen):
    """One field of the job document and what it is to be, as typed there."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    field: Annotated[str, Field(min_length=1, max_length=200)]
    to: Any


class Alternative(Frozen):
    """Another way to do the job: its name and what is changed for it, in this order."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    name: Line
    changes: Annotated[tuple[Change, ...], Field(min_length=1, max_length=50)]


class _Document(Frozen):
    model_config = ConfigDict(extra="forbid", frozen=True)

    alternatives: Annotated[tuple[Alternative, ...], Field(min_length=2, max_length=6)]


def read_alternatives(data: bytes, name: str) -> tuple[Alternative, ...]:
    """The alternatives that a YAML or JSON document names.

    Args:
        data: The document.
        name: What to call it in messages.

    Raises:
        JobError: It cannot be read, or is no list of two to six alternatives with names of their own.
    """
    try:
        text = utf8_text(data)
        root = _root(text)
        found = _Document.model_validate(yaml.safe_load(text)).alternatives
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark
        raise _refused(
            name, f"is no YAML: {error.problem}", (mark.line + 1, mark.column + 1) if mark else (0, 0)
        ) from None
    except ValidationError as error:
        problems = (_problem(one, root, name) for one in error.errors())
        raise JobError(tuple(problems)) from None
    except (InputValueError, ValueError, yaml.YAMLError, RecursionError) as error:
        raise _refused(name, str(error)) from None
    names = [one.name for one in found]
    for number, one in enumerate(names):
        if one in names[:number]:
            at = ("alternatives", number, "name")
            raise _refused(
                name, f"'{one}' is the name of another alternative too; give each its own", _place(root, at), at
            )
    return found


def _root(text: str) -> yaml.Node:
    if any(isinstance(event, yaml.AliasEvent) for event in yaml.parse(text, yaml.SafeLoader)):
        raise InputValueError("repeats a part by a mark (&, *); write it out")
    root = yaml.compose(text, yaml.SafeLoader)
    if root is None:
        raise InputValueError("is empty; list two to six alternatives, each with a name and changes")
    for key, node in _twice(root):
        raise InputValueError(f"line {node.start_mark.line + 1}: '{key}' stands there twice; keep one")
    return root


def _twice(node: yaml.Node) -> Iterator[tuple[str, yaml.Node]]:
    if isinstance(node, yaml.MappingNode):
        seen = set()
        for key, value in node.value:
            if key.value in seen:
                yield str(key.value), key
            seen.add(str(key.value))
            yield from _twice(value)
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _twice(item)


def _place(node: yaml.Node, path: _Path) -> tuple[int, int]:
    """Line and column of what stands at a path, or of the last thing on the way that is there."""
    for part in path:
        if isinstance(node, yaml.MappingNode):
            found = next((value for key, value in node.value if key.value == part), None)
        elif isinstance(node, yaml.SequenceNode) and isinstance(part, int) and part < len(node.value):
            found = node.value[part]
        else:
            found = None
        if found is None:
            break
        node = found
    return node.start_mark.line + 1, node.start_mark.column + 1


def _problem(one: Any, root: yaml.Node, name: str) -> InputProblem:
    path: _Path = one["loc"]
    said = {
        "missing": "is not given",
        "extra_forbidden": "is not known here; an alternative has name and changes, a change has field and to",
        "too_short": "has too few; give two to six alternatives, each with at least one change",
        "too_long": "has too many; give two to six alternatives, each with at most 50 changes",
        "tuple_type": "must be a list, such as lines that begin with '- '",
        "model_type": "must be a group of settings, each `name: value`",
    }
    message = said.get(one["type"], one["msg"].removeprefix("Value error, "))
    received = one["input"]
    if isinstance(received, str | int | float) and one["type"] not in ("missing", "extra_forbidden"):
        message = f"{printable(str(received))[:60]!r}: {message}"
    return _refused(name, message, _place(root, path), path).problems[0]


def _refused(name: str, message: str, at: tuple[int, int] = (0, 0), path: _Path = ()) -> JobError:
    field = "".join(f"[{part + 1}]" if isinstance(part, int) else f".{part}" for part in path).lstrip(".")
    return JobError((InputProblem(file=name, line=at[0], column=at[1], field=field, message=message),))
