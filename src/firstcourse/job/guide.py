"""The reference of the job document, written from the models' own descriptions so that it cannot fall behind."""

import inspect
import re
import types
from collections.abc import Iterator
from enum import Enum
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from firstcourse.job.fields import (
    Corner,
    Distance,
    Emission,
    Inertia,
    JobModel,
    Joint,
    Length,
    Load,
    Name,
    Offset,
    Pair,
    SheetSteel,
    Stiffness,
    Thickness,
    Unevenness,
    Warmth,
    Weight,
)
from firstcourse.job.model import Job
from firstcourse.job.tile import Share

_INTRO = """\
# The job document

A job is one YAML file (JSON is read as well). `firstcourse new my-job.yaml` writes one to start from,
`firstcourse survey my-job.yaml` says what its readings prove, and `firstcourse schema` prints its JSON Schema
for an editor. This page is written from the program's own descriptions; a test keeps them the same.

## Lengths

Every length carries its unit. Feet and inches, inches alone, and metric lengths may stand side by side:

| written | means |
|---|---|
| `5' 3-1/2"`, `5ft 3 1/2in`, `63.5 in` | five feet three and a half inches |
| `1615 mm`, `161.5 cm`, `1.615 m` | one thousand six hundred and fifteen millimetres |

A *measure* (a weight, a stiffness) carries its unit likewise, inch or metric: `620 lb` or `280 kg`,
`2.0e8 lb in2` or `574 kN m2`. Its older name, which ends in one unit, takes a bare number of that and still works.

What could mean two things is refused: a bare number, a comma, 12 or more inches after feet, a fraction no tape
shows. A length that begins with a quote mark needs quotes of its own; `5' 3-1/2"` needs none.

## Corners, sides and where things are measured from

Name the corners **clockwise as seen from above**: stand inside and turn to the right. Side `A-B` then has A at its
left end and B at its right end when you face it from inside. Distances alone cannot tell a room from its mirror
image, so this order is what decides it.

- On a wall: `left` is from the left corner, `bottom` and `top` are above the floor.
- On a floor or ceiling: `left` is from the left end of the named side, `out` is square to that side into the room.
- For a round hole both name its centre.

Sides and diagonals of a room run between bare studs where a wall is to be boarded (its boards stand inside them),
and to the face of a wall that stays. `taped_to` says so; a room taped to a finish that comes off is provisional.

Four sides do not fix a room. Tape at least one diagonal; a second one checks the first. A room with n corners
needs n - 3 diagonals that fix it, and every one above that finds mistakes. You need not choose them: enter the
sides, and `firstcourse survey` names the diagonals that fix the room, then the one that tells two possible
shapes apart, makes the least sure corner surest, or checks what nothing checks yet. It asks only for corners
that see each other.
A distance that was taped through a doorway or round a corner is none of the room: leave it out.

## What is refused

Everything wrong in a file is reported in one run, each with line, column and field. Unknown settings, settings
given twice, YAML aliases and tags, files above 2 MB, sides above 100 m and more than 500 rooms are refused, and so
are openings, studs or blocking outside their wall as taped.

## Every setting

"needed" marks what must be given.
"""

_OWN_WORDS: tuple[tuple[Any, str], ...] = (
    (Length, "length"),
    (Thickness, "length"),
    (Joint, "length"),
    (Unevenness, "length"),
    (Distance, "length, `0 in` allowed"),
    (Offset, "length, minus allowed"),
    (Name, "name"),
    (Corner, "corner"),
    (Pair, "two corners, `A-B`"),
    (Share, "fraction, `1/3`"),
    *((kind, "measure") for kind in (Weight, Load, Stiffness, Inertia, SheetSteel, Emission, Warmth)),
)


def job_guide() -> str:
    """Markdown that explains every setting of the job document."""
    return _INTRO + "".join(f"\n{_section(model)}" for model in _models(Job, []))


def _models(model: type[BaseModel], seen: list[type[BaseModel]]) -> list[type[BaseModel]]:
    seen.append(model)
    for field in model.model_fields.values():
        for inner in _inner(field.annotation):
            if inner not in seen:
                _models(inner, seen)
    return seen


def _inner(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for part in get_args(annotation):
        yield from _inner(part)


def _section(model: type[BaseModel]) -> str:
    rows = "".join(_row(name, field) for name, field in model.model_fields.items())
    return (
        f"### {_title(model)}\n\n{inspect.getdoc(model)}\n\n"
        f"| setting | what | where not given | meaning |\n|---|---|---|---|\n{rows}"
    )


def _row(name: str, field: FieldInfo) -> str:
    # Pydantic moves the outer metadata of an annotation to the field; put together it is the alias again.
    whole = Annotated[field.annotation, *field.metadata] if field.metadata else field.annotation
    return f"| `{field.alias or name}` | {_what(whole)} | {_default(field)} | {field.description} |\n"


def _title(model: type[BaseModel]) -> str:
    return re.sub(r"(?<=[a-z])(?=[A-Z])", " ", model.__name__).capitalize()


def _default(field: FieldInfo) -> str:
    if field.is_required():
        return "needed"
    value = field.default
    if isinstance(value, bool):
        return "`yes`" if value else "`no`"
    if isinstance(value, Enum):
        return f"`{value.value}`"
    return f"`{value}`" if isinstance(value, str) and value else "–"


def _what(annotation: Any) -> str:
    for alias, words in _OWN_WORDS:
        if _same(annotation, alias):
            return words
    origin, parts = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _what(parts[0])
    if origin in (Union, types.UnionType):
        return _what(next(part for part in parts if part is not type(None)))
    if origin is Literal:
        return ", ".join(f"`{part}`" for part in parts)
    if origin is dict:
        return f"{_what(parts[0])}: {_what(parts[1])}"
    if origin is tuple:
        return f"list of {_what(parts[0])}" if parts[-1] is Ellipsis else f"[{', '.join(map(_what, parts))}]"
    if issubclass(annotation, JobModel):
        title = _title(annotation)
        return f"[{title}](#{title.lower().replace(' ', '-')})"
    if issubclass(annotation, Enum):
        return ", ".join(f"`{choice.value}`" for choice in annotation)
    return {
        "str": "text",
        "int": "whole number",
        "float": "number",
        "bool": "`yes` or `no`",
        "date": "date, such as `2026-11-25`",
    }[annotation.__name__]


def _same(annotation: Any, alias: Any) -> bool:
    if get_origin(annotation) is not Annotated or get_args(annotation)[0] is not get_args(alias)[0]:
        return False
    return [repr(part) for part in _constraints(annotation)] == [repr(part) for part in _constraints(alias)]


def _constraints(annotation: Any) -> list[Any]:
    """Metadata of an annotation with pydantic's `Field` taken apart, as the field itself holds it."""
    flat: list[Any] = []
    for part in get_args(annotation)[1:]:
        flat += part.metadata if isinstance(part, FieldInfo) else [part]
    return flat
