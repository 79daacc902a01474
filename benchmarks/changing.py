"""Job documents to change, and how they are changed: a copy is made from its seed alone.

Most copies carry one to three changes: lengths a little or far off, nothing, negative, with another unit; choices
exchanged; settings left out, doubled, or put in as the schema allows; parts of another document put in place of
their like.
"""

import copy
import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).parents[1]
SMALL_JOBS = Path(__file__).with_name("small_jobs.yaml")
FROM_EXAMPLES = 0.1
"""So often a copy is of an example, of which one or two surfaces are kept; otherwise it is of a small job."""
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_ODD = (
    "0 mm",
    "-5 mm",
    "1/16 in",
    "1 mm",
    "0.5 mm",
    "100 m",
    "3 3/4 in",
    "40 in",
    "900 mm",
    "",
    "x",
    "1e9 mm",
    None,
)
_FACTORS = (0.01, 0.3, 0.5, 0.9, 0.97, 0.99, 1.01, 1.03, 1.1, 1.5, 2, 3, 10)

Path_ = tuple[str | int, ...]


class Loader(yaml.SafeLoader):
    """Reads every scalar as the text that was typed, as the program does."""


Loader.yaml_implicit_resolvers = {}


def small_jobs() -> list[dict[str, Any]]:
    """The small jobs, as typed."""
    return list(yaml.load_all(SMALL_JOBS.read_text(encoding="utf-8"), Loader))


def examples() -> list[dict[str, Any]]:
    """The jobs of the examples and of the tests, as typed."""
    files = [*sorted(ROOT.glob("examples/*/job.yaml")), *sorted(ROOT.glob("tests/**/*.yaml"))]
    found = [yaml.load(file.read_text(encoding="utf-8"), Loader) for file in files]
    return [job for job in found if isinstance(job, dict) and "rooms" in job]


def typed(job: dict[str, Any]) -> str:
    """A document's text."""
    return yaml.safe_dump(job, sort_keys=False, allow_unicode=True)


class Changer:
    """Makes changed copies.

    Attributes:
        small, large: Documents that copies are made of.
        schema: What a document may hold.
    """

    def __init__(self, schema: dict[str, Any]) -> None:
        self.small, self.large = small_jobs(), examples()
        self.schema = schema

    def job(self, seed: int) -> dict[str, Any]:
        """The changed copy of a seed."""
        rng = random.Random(seed)
        few = rng.random() < FROM_EXAMPLES
        job = copy.deepcopy(rng.choice(self.large if few else self.small))
        if few:
            _keep_few(rng, job)
        documents = [*self.small, *self.large]
        for _ in range(rng.choice((1, 1, 1, 2, 2, 3, 6))):
            change = rng.choice(
                (_scale, _scale, _scale, _odd, _drop, _double, _exchange, _choose, _put_in, _put_in, _graft)
            )
            change(rng, job, self.schema, documents)
        return job


def _keep_few(rng: random.Random, job: dict[str, Any]) -> None:
    """Keep one or two surfaces of the first room, so that a job takes little time."""
    room = job["rooms"][0]
    del job["rooms"][1:]
    grounds: list[Any] = [name for name in ("floor", "ceiling") if name in room]
    grounds += range(len(room.get("walls", ())))
    kept = rng.sample(grounds, min(len(grounds), rng.choice((1, 1, 2))))
    for name in ("floor", "ceiling"):
        if name not in kept:
            room.pop(name, None)
    room["walls"] = [wall for number, wall in enumerate(room.get("walls", ())) if number in kept]
    if not room["walls"]:
        del room["walls"]
    boarded = {wall["wall"] for wall in room.get("walls", ())}
    room["benches"] = [bench for bench in room.get("benches", ()) if bench["wall"] in boarded]


def _places(value: Any, path: Path_ = ()) -> Iterator[tuple[Path_, Any]]:
    yield path, value
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, child in items:
        yield from _places(child, (*path, key))


def _holder(job: Any, path: Path_) -> Any:
    for part in path[:-1]:
        job = job[part]
    return job


def _pick(rng: random.Random, job: Any, kind: type | tuple[type, ...]) -> Path_ | None:
    found = [path for path, value in _places(job) if path and isinstance(value, kind)]
    return rng.choice(found) if found else None


def _scale(rng: random.Random, job: Any, _schema: Any, _documents: Any) -> None:
    found = [path for path, value in _places(job) if isinstance(value, str) and re.search(r"\d", value) and path]
    if found:
        path = rng.choice(found)
        holder, factor = _holder(job, path), rng.choice(_FACTORS)
        holder[path[-1]] = _NUMBER.sub(
            lambda match: (
                f"{float(match[0]) * factor:.4g}"
                if "." in match[0] or factor < 1
                else str(round(float(match[0]) * factor))
            ),
            holder[path[-1]],
            count=1,
        )


def _odd(rng: random.Random, job: Any, _schema: Any, _documents: Any) -> None:
    if (path := _pick(rng, job, str)) is not None:
        _holder(job, path)[path[-1]] = rng.choice(_ODD)


def _drop(rng: random.Random, job: Any, _schema: Any, _documents: Any) -> None:
    if (path := _pick(rng, job, (str, list, dict))) is not None:
        del _holder(job, path)[path[-1]]


def _double(rng: random.Random, job: Any, _schema: Any, _documents: Any) -> None:
    found = [
        path for path, value in _places(job) if path and isinstance(value, dict) and isinstance(path[-1], int)
    ]
    if found:
        path = rng.choice(found)
        again = copy.deepcopy(_holder(job, path)[path[-1]])
        for key in ("id", "name"):
            if key in again:
                again[key] = f"{again[key]} 2"
        _holder(job, path).insert(path[-1], again)
        _scale(rng, again, None, None)


def _exchange(rng: random.Random, job: Any, _schema: Any, _documents: Any) -> None:
    one, other = _pick(rng, job, str), _pick(rng, job, str)
    if one is not None and other is not None:
        a, b = _holder(job, one), _holder(job, other)
        a[one[-1]], b[other[-1]] = b[other[-1]], a[one[-1]]


def _graft(rng: random.Random, job: Any, _schema: Any, documents: list[dict[str, Any]]) -> None:
    """Put a part of another document in place of its like."""
    found = [(path, value) for path, value in _places(rng.choice(documents)) if path and isinstance(path[-1], str)]
    path, value = rng.choice(found)
    alike = [other for other, _ in _places(job) if other and other[-1] == path[-1]]
    if alike:
        place = rng.choice(alike)
        _holder(job, place)[place[-1]] = copy.deepcopy(value)


def _choose(rng: random.Random, job: Any, schema: dict[str, Any], _documents: Any) -> None:
    """Another of the choices that the schema allows."""
    found = [
        (path, choices)
        for path, value in _places(job)
        if path and isinstance(value, str) and (choices := _choices(_schema_at(schema, path), schema))
    ]
    if found:
        path, choices = rng.choice(found)
        _holder(job, path)[path[-1]] = rng.choice(choices)


def _put_in(rng: random.Random, job: Any, schema: dict[str, Any], _documents: Any) -> None:
    """A setting that the schema allows and the document does not have."""
    found = [
        (path, name, part)
        for path, value in _places(job)
        if isinstance(value, dict)
        for name, part in _object(_schema_at(schema, path), schema).get("properties", {}).items()
        if name not in value
    ]
    if found:
        path, name, part = rng.choice(found)
        target = job
        for step in path:
            target = target[step]
        target[name] = _sample(rng, part, schema, 0)


def _options(part: dict[str, Any], schema: dict[str, Any]) -> list[dict[str, Any]]:
    if "$ref" in part:
        return _options(schema["$defs"][part["$ref"].rsplit("/", 1)[1]], schema)
    if "anyOf" in part:
        return [option for choice in part["anyOf"] for option in _options(choice, schema)]
    return [part]


def _object(part: dict[str, Any] | None, schema: dict[str, Any]) -> dict[str, Any]:
    return next((o for o in _options(part or {}, schema) if "properties" in o), {})


def _choices(part: dict[str, Any] | None, schema: dict[str, Any]) -> list[Any]:
    return [choice for o in _options(part or {}, schema) for choice in o.get("enum", ())]


def _schema_at(schema: dict[str, Any], path: Path_) -> dict[str, Any] | None:
    part: dict[str, Any] | None = schema
    for step in path:
        options = _options(part or {}, schema)
        if isinstance(step, int):
            part = next(
                (
                    o["prefixItems"][min(step, len(o["prefixItems"]) - 1)]
                    if "prefixItems" in o
                    else o.get("items")
                    for o in options
                    if "prefixItems" in o or "items" in o
                ),
                None,
            )
        else:
            part = next((o["properties"][step] for o in options if step in o.get("properties", {})), None)
        if part is None:
            return None
    return part


def _item(option: dict[str, Any], place: int) -> dict[str, Any] | None:
    items = option.get("prefixItems")
    return items[min(place, len(items) - 1)] if items else option.get("items")


def _sample(rng: random.Random, part: dict[str, Any], schema: dict[str, Any], depth: int) -> Any:
    option = rng.choice([o for o in _options(part, schema) if o.get("type") != "null"] or [{}])
    if "enum" in option:
        return rng.choice(option["enum"])
    if "const" in option:
        return option["const"]
    if "properties" in option:
        wanted = option.get("required", [])
        return {
            name: _sample(rng, child, schema, depth + 1)
            for name, child in option["properties"].items()
            if name in wanted or (depth < 3 and rng.random() < 0.4)
        }
    if option.get("type") == "array":
        if "prefixItems" in option:
            return [_sample(rng, child, schema, depth + 1) for child in option["prefixItems"]]
        return [_sample(rng, option.get("items", {}), schema, depth + 1) for _ in range(rng.choice((1, 1, 2)))]
    if option.get("type") in ("integer", "number"):
        low, high = option.get("minimum", option.get("exclusiveMinimum", 0)), option.get("maximum", 100)
        value = rng.choice((low, high, (low + high) / 2, 1, 3))
        return round(value) if option["type"] == "integer" else value
    if option.get("type") == "boolean":
        return rng.choice(("yes", "no", True))
    if "a length" in option.get("description", "") or "examples" in option:
        return rng.choice(
            ("1/4 in", "1 in", "6 in", "12 in", "24 in", "40 in", "72 in", "3 mm", "50 mm", "600 mm")
        )
    if "-" in option.get("pattern", "")[-25:] and "Za-z" in option.get("pattern", ""):
        return rng.choice(("A-B", "B-C", "C-D", "D-A"))
    return rng.choice(("A", "B", "wall tile", "floor tile", "niche", "bench", "why not"))
