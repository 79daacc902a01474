"""Read a YAML document that somebody wrote into a frozen value; what is wrong is said with its line and column."""

import difflib
from collections.abc import Callable, Iterable
from typing import Any

import yaml
from pydantic import BaseModel, ValidationError

from firstcourse.errors import InputProblem, InputValueError, JobError
from firstcourse.files import utf8_text
from firstcourse.units import printable

MOST_NODES, DEEPEST = 200_000, 8

KeyPath = tuple[str | int, ...]
Places = dict[KeyPath, tuple[int, int]]
"""By the path of a value, the line and column at which it stands."""


def read_placed[M: BaseModel](
    data: bytes,
    name: str,
    model: type[M],
    what: str,
    wrong: Callable[[M], Iterable[tuple[KeyPath, str]]] = lambda _read: (),
) -> M:
    """Read a YAML (or JSON) document.

    Args:
        data: The file.
        name: What to call it in messages.
        model: What it is to say.
        what: What it should be, such as `a price book`, for messages.
        wrong: What is wrong beyond that, by the path of the value.

    Raises:
        JobError: Listing every problem found, with line and column.
    """
    try:
        found, places = from_yaml(utf8_text(data), name, what)
    except InputValueError as error:
        raise refused(name, str(error)) from None
    try:
        read = model.model_validate(found)
    except ValidationError as error:
        listed = error.errors(include_url=False)
        raise JobError(tuple(problem(one, places, name, model) for one in listed)) from None
    problems = tuple(
        InputProblem(
            file=name, line=places[at][0], column=places[at][1], field=dotted(at), message=printable(message)
        )
        for at, message in wrong(read)
    )
    if problems:
        raise JobError(problems)
    return read


def refused(name: str, message: str, at: tuple[int, int] = (0, 0), field: str = "") -> JobError:
    """The refusal of a document for one reason.

    Args:
        name: What to call it.
        message: What is wrong.
        at: Line and column; 0 where there is none.
        field: Dotted.
    """
    found = InputProblem(file=name, line=at[0], column=at[1], field=field, message=printable(message))
    return JobError((found,))


def from_yaml(text: str, name: str, what: str) -> tuple[Any, Places]:
    """Mappings, lists and texts as they were typed, with their places.

    Args:
        text: YAML or JSON.
        name: What to call it in messages.
        what: What it should be.

    Raises:
        JobError: It cannot be read, repeats a key, or uses aliases.
    """
    try:
        root = yaml.compose(text, yaml.CSafeLoader)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        at = (mark.line + 1, mark.column + 1) if mark else (0, 0)
        raise refused(name, f"cannot be read: {error.problem or error.context}", at) from None
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        raise refused(name, f"cannot be read as YAML: {str(error).splitlines()[0]}") from None
    if not isinstance(root, yaml.MappingNode):
        raise refused(name, f"must begin with keys of {what}, such as `name:`")
    places: Places = {}
    seen: set[int] = set()
    return _plain(root, (), places, seen, name, what), places


def _plain(node: yaml.Node, path: KeyPath, places: Places, seen: set[int], name: str, what: str) -> Any:
    at = (node.start_mark.line + 1, node.start_mark.column + 1)
    places[path] = at
    if id(node) in seen:
        raise refused(name, f"anchors and aliases are not used in {what}; write it out", at)
    seen.add(id(node))
    if len(seen) > MOST_NODES or len(path) > DEEPEST:
        raise refused(name, f"is more than {what} holds", at)
    if isinstance(node, yaml.MappingNode):
        found: dict[str, Any] = {}
        for key, value in node.value:
            where = (key.start_mark.line + 1, key.start_mark.column + 1)
            if not isinstance(key, yaml.ScalarNode) or key.value in found:
                raise refused(name, "a key must be plain text that stands once", where, dotted(path))
            found[key.value] = _plain(value, (*path, key.value), places, seen, name, what)
        return found
    if isinstance(node, yaml.SequenceNode):
        return [_plain(one, (*path, at), places, seen, name, what) for at, one in enumerate(node.value)]
    return None if node.tag.endswith(":null") and not getattr(node, "style", None) else node.value


def problem(one: Any, places: Places, name: str, model: type[BaseModel]) -> InputProblem:
    """A complaint of the model, with the place of what it is about.

    Args:
        one: The complaint.
        places: Of every value.
        name: What to call the document.
        model: What it was to say.
    """
    path = tuple(one["loc"])
    known = path
    while known not in places:
        known = known[:-1]
    line, column = places[known]
    message = one["msg"].removeprefix("Value error, ")
    if one["type"] == "extra_forbidden":
        message = f"'{path[-1]}' is not known here" + _meant(path, model)
    elif one["type"] == "missing":
        message = f"'{path[-1]}' is missing"
    elif isinstance(one["input"], str):
        message = f"{message[:1].lower()}{message[1:]}; received '{one['input'][:60]}'"
    return InputProblem(file=name, line=line, column=column, field=dotted(path), message=printable(message))


def _meant(path: KeyPath, model: type[BaseModel]) -> str:
    if len(path) != 1:
        return ""
    near = difflib.get_close_matches(str(path[0]), model.model_fields, n=1)
    return f"; is `{near[0]}` meant?" if near else ""


def dotted(path: KeyPath) -> str:
    """A path as messages name it, lists counted from 1."""
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f".{part}" if text else str(part)
    return text
