"""Change one field of a job document where it stands, so that comments, order and layout stay as they were typed.

A field is named as messages name it: `rooms[1].walls[2].openings[1].left`, lists counted from 1. Its value is put
into the text between the marks of the node that stands there; nothing else of the text is touched.
"""

import json
import re
from collections.abc import Mapping, Sequence
from datetime import date
from typing import NamedTuple

import yaml

from firstcourse.errors import InputProblem, JobError
from firstcourse.units import printable

FieldValue = str | int | float | bool | date | None | Sequence["FieldValue"] | Mapping[str, "FieldValue"]
"""What a field may be set to: texts as they are typed, such as `5' 3-1/2"`, numbers, lists and groups of such."""

_PART = re.compile(r"(?:^|\.)(?P<key>[^.\[\]]+)|\[(?P<number>[1-9]\d*)\]")
_KEY = re.compile(r"[A-Za-z_][\w-]*")


class _Spot(NamedTuple):
    """Where in the text something is put instead of what stands from `start` to `end`."""

    start: int
    end: int
    text: str


def edited_text(text: str, field: str, value: FieldValue, *, name: str = "job.yaml") -> str:
    """The document with one field set; what it says is not checked here, see `read_job_text`.

    A setting or the next item of a list that is not there yet is put after those that are.

    Args:
        text: The document, which can be read.
        field: Such as `rooms[1].floor.openings[2].left`.
        value: What it is to be; lengths are texts with a unit.
        name: What to call the document in messages.

    Raises:
        JobError: The field names no place in the document.
    """
    parts = _parts(field, name)
    node = yaml.compose(text, yaml.CSafeLoader)
    if node is None:
        raise JobError((InputProblem(file=name, line=0, column=0, field="", message="is empty"),))
    plain = not text.lstrip().startswith("{")
    for depth, part in enumerate(parts):
        child = _child(node, part)
        if child is None:
            if depth < len(parts) - 1 or not isinstance(node, yaml.CollectionNode) or not _may_grow(node, part):
                raise _nowhere(name, field, node)
            spot = _grown(text, node, part, value, plain=plain)
            return text[: spot.start] + spot.text + text[spot.end :]
        node = child
    spot = _replaced(text, node, value, plain=plain)
    return text[: spot.start] + spot.text + text[spot.end :]


def with_block(text: str, key: str, value: Mapping[str, FieldValue], lines: Sequence[str]) -> str:
    """The document with one of its own settings written over several lines, or as JSON where it is JSON.

    Args:
        text: The document, which can be read.
        key: The setting, such as `done`; what stands under it is replaced, else it comes last.
        value: What it is to be.
        lines: The same as lines of YAML, each set in as far as it belongs under the key.
    """
    root = yaml.compose(text, yaml.CSafeLoader)
    if not isinstance(root, yaml.MappingNode) or root.flow_style:
        return edited_text(text, key, value)
    turn = "\r\n" if "\r\n" in text else "\n"
    block = turn.join([f"{key}:", *lines])
    for name, node in root.value:
        if name.value == key:
            return text[: name.start_mark.index] + block + text[len(text[: _end(node)].rstrip()) :]
    return f"{text.rstrip()}{turn}{turn}{block}{turn}"


def without_item(text: str, field: str, number: int) -> str:
    """The document without one item of a list, with the comment on its line; the list stays, however short.

    Args:
        text: The document, which can be read.
        field: The list, such as `offcuts` or `rooms[1].walls[2].openings`.
        number: Which item, from 0.
    """
    node: yaml.Node | None = yaml.compose(text, yaml.CSafeLoader)
    for part in _parts(field, "job.yaml"):
        node = None if node is None else _child(node, part)
    if not isinstance(node, yaml.SequenceNode) or number >= len(node.value):
        return text
    if node.flow_style or len(node.value) == 1:
        kept = [_plain_value(item) for index, item in enumerate(node.value) if index != number]
        return edited_text(text, field, kept)
    start = text.rfind("\n", 0, node.value[number].start_mark.index) + 1
    end = text.find("\n", _end(node.value[number]))
    return text[:start] + (text[end + 1 :] if end >= 0 else "")


def _plain_value(node: yaml.Node) -> FieldValue:
    """What stands at a node, texts as they are typed."""
    if isinstance(node, yaml.MappingNode):
        return {str(key.value): _plain_value(value) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [_plain_value(item) for item in node.value]
    return str(node.value)


def _parts(field: str, name: str) -> tuple[str | int, ...]:
    parts: list[str | int] = []
    at = 0
    while at < len(field):
        found = _PART.match(field, at)
        if found is None:
            break
        parts.append(int(found["number"]) - 1 if found["number"] else found["key"])
        at = found.end()
    if not parts or at < len(field):
        said = f"'{printable(field)}' names no field; write it like rooms[1].floor.openings[2].left"
        raise JobError((InputProblem(file=name, line=0, column=0, field="", message=said),))
    return tuple(parts)


def _child(node: yaml.Node, part: str | int) -> yaml.Node | None:
    if isinstance(node, yaml.MappingNode) and isinstance(part, str):
        return next((value for key, value in node.value if key.value == part), None)
    if isinstance(node, yaml.SequenceNode) and isinstance(part, int) and part < len(node.value):
        found: yaml.Node = node.value[part]
        return found
    return None


def _may_grow(node: yaml.Node, part: str | int) -> bool:
    if isinstance(node, yaml.MappingNode):
        return isinstance(part, str) and _KEY.fullmatch(part) is not None
    return isinstance(node, yaml.SequenceNode) and part == len(node.value)


def _nowhere(name: str, field: str, nearest: yaml.Node) -> JobError:
    mark = nearest.start_mark
    if isinstance(nearest, yaml.MappingNode):
        there = f"there are {', '.join(str(key.value) for key, _ in nearest.value)}"
    elif isinstance(nearest, yaml.SequenceNode):
        there = f"the list here holds {len(nearest.value)}"
    else:
        there = f"'{nearest.value}' stands here and holds no settings"
    message = printable(f"there is no such field; {there}")
    line, column = mark.line + 1, mark.column + 1
    return JobError((InputProblem(file=name, line=line, column=column, field=printable(field), message=message),))


def _replaced(text: str, node: yaml.Node, value: FieldValue, *, plain: bool) -> _Spot:
    start, end = node.start_mark.index, _end(node)
    written = _written(value, plain=plain)
    # A text set in over several lines ends with the line after it.
    end = len(text[:end].rstrip()) if end > start and text[end - 1].isspace() else end
    if start == end and text[start - 1 : start] not in (" ", "\t", "\n"):
        written = f" {written}"
    return _Spot(start, end, written)


def _grown(text: str, node: yaml.CollectionNode, part: str | int, value: FieldValue, *, plain: bool) -> _Spot:
    """One more setting or item, after the last."""
    written = _written(value, plain=plain)
    if isinstance(part, str):
        written = f"{part if plain else json.dumps(part)}: {written}"
    if node.flow_style:
        if not node.value:
            return _Spot(node.start_mark.index + 1, node.start_mark.index + 1, written)
        end = _end(_last(node))
        return _Spot(end, end, f", {written}")
    # On a line of its own, set in as those above, after what is said at the end of the last line.
    end = text.find("\n", _end(_last(node)))
    end = len(text) if end < 0 else end - (text[end - 1] == "\r")
    turn = "\r\n" if "\r\n" in text else "\n"
    lead = "" if isinstance(part, str) else "- "
    return _Spot(end, end, f"{turn}{' ' * node.start_mark.column}{lead}{written}")


def _last(node: yaml.CollectionNode) -> yaml.Node:
    last: yaml.Node = node.value[-1][1] if isinstance(node, yaml.MappingNode) else node.value[-1]
    return last


def _end(node: yaml.Node) -> int:
    """Where a node ends: a block is marked as ending where the next begins, comments between included."""
    while isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        node = _last(node)
    end: int = node.end_mark.index
    return end


def _written(value: FieldValue, *, plain: bool) -> str:
    """A value on one line, so that it reads as what it is."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return ("yes" if value else "no") if plain else json.dumps(value)
    if isinstance(value, int | float):
        return json.dumps(value)
    if isinstance(value, date):
        return value.isoformat() if plain else json.dumps(value.isoformat())
    if isinstance(value, str):
        return value if plain and _stands_plain(value) else _quoted(value)
    if isinstance(value, Mapping):
        items = [(_written(str(key), plain=plain), _written(item, plain=plain)) for key, item in value.items()]
        return f"{{{', '.join(f'{key}: {item}' for key, item in items)}}}"
    return f"[{', '.join(_written(item, plain=plain) for item in value)}]"


def _quoted(text: str) -> str:
    """In double quotes; what cannot be seen stands as its code, for line breaks of any kind would be folded."""
    quoted = json.dumps(text, ensure_ascii=False)
    return "".join(sign if sign.isprintable() else json.dumps(sign)[1:-1] for sign in quoted)


def _stands_plain(text: str) -> bool:
    """Whether a text may stand without quotes, in a block and within brackets alike."""
    try:
        node = yaml.compose(f"[{{a: {text}}}, {text}]", yaml.CSafeLoader)
        alone = yaml.compose(f"a: {text}\n", yaml.CSafeLoader)
        if not isinstance(node, yaml.SequenceNode) or not isinstance(alone, yaml.MappingNode):
            return False
        found = [node.value[0].value[0][1], node.value[1], alone.value[0][1]]
    except (yaml.YAMLError, ValueError, LookupError):
        return False
    return len(node.value) == 2 and all(
        isinstance(one, yaml.ScalarNode) and one.value == text and not one.style and not one.tag.endswith(":null")
        for one in found
    )
