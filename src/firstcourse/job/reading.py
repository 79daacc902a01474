"""Read a job document; everything wrong with it is reported at once, each with line and column.

YAML is read as nodes, so every key and value knows its place and every scalar stays the text that was typed:
no `no` turns into a falsehood and no `0600` into a number. JSON is read the same way.
"""

import difflib
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import yaml
from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from firstcourse.errors import InputProblem, InputValueError, JobError, RuleNotFoundError
from firstcourse.files import read_file, utf8_text
from firstcourse.job.checks import check_job
from firstcourse.job.done import SURFACE_PATTERN
from firstcourse.job.fields import CORNER_PATTERN, LONGEST_SIDE_MM, NAME_PATTERN, PAIR_PATTERN, PRINTED_PATTERN
from firstcourse.job.model import Job
from firstcourse.units import mm, printable, to_inches, to_mm

LARGEST_FILE_BYTES = 2_000_000
DEEPEST = 30
MOST_NODES = 200_000
MOST_PROBLEMS = 200

_PLAIN_TAGS = frozenset(
    f"tag:yaml.org,2002:{kind}"
    for kind in ("null", "bool", "int", "float", "timestamp", "str", "map", "seq", "merge", "value")
)
_WANTED = {
    NAME_PATTERN: "a name: letters, digits, spaces, '.', '_' and '-', at most 60 of them, a letter or digit first",
    CORNER_PATTERN: "a corner's name: a letter, then at most three letters or digits",
    SURFACE_PATTERN: "a surface's id as the plan has it, such as bath/wall/A-B or bath/floor",
    PAIR_PATTERN: "two corners with a hyphen between them, such as A-B",
    PRINTED_PATTERN: "a line that the papers can print: letters of European languages in Latin script",
    r"^[A-Z]{0,3}$": "a currency's three capitals, such as USD",
}

_WANTED_KINDS = (
    ("model_", "must be a group of settings, each `name: value` on a line of its own or all within { }"),
    ("dict_", "must be a group of `name: value`, such as {A-B: 1615 mm}"),
    ("tuple_", "must be a list, such as [one, two] or lines that begin with '- '"),
    ("int_", "must be a whole number without a unit"),
    ("float_", "must be a number without a unit"),
    ("finite_", "must be a number that ends, neither endless nor NaN"),
    ("string_type", "must be one text"),
    ("bool_", "must be yes or no"),
    ("date_", "must be a date, such as 2026-11-25"),
    ("is_instance_of", "must be a fraction, such as 1/2"),
)
"""What belongs there, by the beginning of the models' name for the mistake."""

FieldPath = tuple[str | int, ...]
Places = dict[FieldPath, tuple[int, int]]


def read_job(path: Path) -> Job:
    """Read a job document from a file.

    Raises:
        JobError: The file cannot be read or says something a job cannot say.
    """
    return read_job_text(job_file_text(path), str(path))


def job_file_text(path: Path) -> str:
    """The text of a job document's file.

    Raises:
        JobError: The file cannot be read.
    """
    try:
        return utf8_text(read_file(path, most_bytes=LARGEST_FILE_BYTES, what="a job document"))
    except InputValueError as error:
        raise _refuse(str(path), str(error)) from None


def read_job_text(text: str, name: str = "job.yaml") -> Job:
    """Read a job document from its text.

    Args:
        text: YAML or JSON.
        name: What to call it in messages.

    Raises:
        JobError: Listing every problem found.
    """
    return read_document(text, name, Job, check_job)


def read_document[Document: BaseModel](
    text: str,
    name: str,
    model: type[Document],
    check: Callable[[Document], Iterable[tuple[FieldPath, str]]],
) -> Document:
    """Read a document that is made like a job document.

    Args:
        text: YAML or JSON.
        name: What to call it in messages.
        model: What it holds.
        check: What its parts say against each other, each with the field it stands at.

    Raises:
        JobError: Listing every problem found.
    """
    data, places, problems = _tree(text, name)
    if problems:
        raise _all(name, problems)
    try:
        document = model.model_validate(data)
    except ValidationError as error:
        raise _all(name, _problems(error.errors(include_url=False), data, places, name, model)) from None
    wrong = check(document)
    found = [_problem(name, places, path, message) for path, message in wrong]
    if found:
        raise _all(name, found)
    return document


def _all(name: str, problems: Sequence[InputProblem]) -> JobError:
    """Everything found, in the order of the file; a file that is wrong throughout is cut short."""
    ordered = sorted(problems, key=lambda problem: (problem.line, problem.column))
    if len(ordered) > MOST_PROBLEMS:
        more = f"and {len(ordered) - MOST_PROBLEMS:,} problems more"
        last = InputProblem(file=name, line=0, column=0, field="", message=more)
        ordered = [*ordered[:MOST_PROBLEMS], last]
    return JobError(tuple(ordered))


@contextmanager
def problems_placed(text: str, name: str) -> Iterator[None]:
    """Give problems that a later step finds their line and column in the job document.

    Fields of the problems read like `rooms[1].diagonals`, perhaps with a name in brackets.

    Args:
        text: The document.
        name: What to call it in messages.
    """
    try:
        yield
    except JobError as error:
        found = [(_undotted(problem.field.split(" (")[0]), problem.message) for problem in error.problems]
    except RuleNotFoundError as error:
        found = [(("date",), str(error))]
    except InputValueError as error:
        raise _refuse(name, str(error)) from None
    else:
        return
    try:
        _, places, _ = _tree(text, name)
    except ValueError:
        places = {}
    raise JobError(tuple(_problem(name, places, field, message) for field, message in found))


def _undotted(field: str) -> FieldPath:
    parts: list[str | int] = []
    for name, number in re.findall(r"([^.\[\]]+)|\[(\d+)\]", field):
        parts.append(name if name else int(number) - 1)
    return tuple(parts)


def _refuse(name: str, message: str) -> JobError:
    return JobError((InputProblem(file=name, line=0, column=0, field="", message=message),))


def _tree(text: str, name: str) -> tuple[Any, Places, list[InputProblem]]:
    try:
        root = yaml.compose(text, yaml.CSafeLoader)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
        message = printable(_not_yaml(error, text, line))
        problem = InputProblem(file=name, line=line, column=column, field="", message=message)
        raise JobError((problem,)) from None
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        raise _refuse(name, f"cannot be read as YAML: {str(error).splitlines()[0]}") from None
    if root is None:
        raise _refuse(name, "is empty; `firstcourse new` writes one to start from")
    if not isinstance(root, yaml.MappingNode):
        raise _refuse(name, "must begin with keys such as `name:` and `rooms:`")
    walker = _Walker(name)
    data = walker.value(root, ())
    return data, walker.places, walker.problems


def _not_yaml(error: yaml.MarkedYAMLError, text: str, line: int) -> str:
    """Why a text cannot be read, in words that name what people mistype: tabs, brackets, quotes, colons."""
    said = error.problem or error.context or "cannot be read as YAML"
    lines = text.splitlines()
    here = lines[line - 1] if line <= len(lines) else ""
    shown = f"'{_short(here.strip())}'"
    opened = f"line {error.context_mark.line + 1}" if error.context_mark else "a line above"
    if "\t" in here[: len(here) - len(here.lstrip())]:
        return f"{shown} is set in with a tab; use spaces"
    if "expected ',' or" in said:
        return f"the bracket that opens in {opened} is not closed before {shown}, or a comma is missing"
    if "end of stream" in said and "quoted" in (error.context or ""):
        return f"the quote mark that opens in {opened} is never closed"
    if "expected key" in said or "expected ':'" in said:
        return (
            f"{shown} does not go on from {opened}: look from there on for a quote mark that is not closed, a "
            "colon that is missing, or a line that is set in more or less than those beside it"
        )
    if "mapping values are not allowed" in said:
        return (
            f"{shown} has a colon where none can stand: set the line in like those beside it, or put a text that "
            "holds a colon in quotes"
        )
    return f"{shown} cannot be read: {said}"


class _Walker:
    """Turns nodes into plain values and keeps the place of each."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.places: Places = {}
        self.problems: list[InputProblem] = []
        self.seen: set[int] = set()

    def value(self, node: yaml.Node, path: FieldPath) -> Any:
        place = (node.start_mark.line + 1, node.start_mark.column + 1)
        self.places.setdefault(path, place)
        if id(node) in self.seen:
            self._wrong(place, path, "anchors and aliases are not used in a job document; write it out")
            return None
        self.seen.add(id(node))
        if len(path) > DEEPEST:
            raise self._too_much(place, path, f"is nested more than {DEEPEST} deep; a job document never is")
        if len(self.seen) > MOST_NODES:
            raise self._too_much(place, path, f"is more than a job document holds ({MOST_NODES:,} values at most)")
        if node.tag not in _PLAIN_TAGS:
            self._wrong(place, path, f"the tag {node.tag} is not used in a job document")
            return None
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return [self.value(child, (*path, index)) for index, child in enumerate(node.value)]
        is_null = node.tag.endswith(":null") and not getattr(node, "style", None)
        return None if is_null else node.value

    def _mapping(self, node: yaml.MappingNode, path: FieldPath) -> dict[str, Any]:
        result: dict[str, Any] = {}
        for key_node, value_node in node.value:
            place = (key_node.start_mark.line + 1, key_node.start_mark.column + 1)
            if not isinstance(key_node, yaml.ScalarNode):
                self._wrong(place, path, "a key must be plain text")
                continue
            key = key_node.value
            if key in result:
                self._wrong(place, (*path, key), f"'{key}' stands twice here")
                continue
            self.places[(*path, key)] = (value_node.start_mark.line + 1, value_node.start_mark.column + 1)
            self.places[(*path, key, "[key]")] = place
            result[key] = self.value(value_node, (*path, key))
        return result

    def _too_much(self, place: tuple[int, int], path: FieldPath, message: str) -> JobError:
        self._wrong(place, path[:3], message)
        return JobError((self.problems[-1],))

    def _wrong(self, place: tuple[int, int], path: FieldPath, message: str) -> None:
        self.problems.append(
            InputProblem(
                file=self.name,
                line=place[0],
                column=place[1],
                field=printable(_dotted(path)),
                message=printable(message),
            )
        )


def _problems(
    errors: Iterable[ErrorDetails], data: Any, places: Places, name: str, model: type[BaseModel]
) -> tuple[InputProblem, ...]:
    found = []
    listed = list(errors)
    for error in listed:
        if error["type"] == "too_short" and any(
            other is not error and other["loc"][: len(error["loc"])] == error["loc"] for other in listed
        ):
            # The list is only short because an item in it is refused, which is said by itself.
            continue
        path = tuple(part for part in error["loc"] if part != "[key]")
        kind, received = error["type"], error["input"]
        if kind == "extra_forbidden":
            message = f"'{path[-1]}' is not a setting here{_did_you_mean(str(path[-1]), path[:-1], model)}"
            found.append(_problem(name, places, (*path, "[key]"), message))
            continue
        if kind == "missing" and isinstance(path[-1], int):
            message = f"value {path[-1] + 1} of this list is missing"
            found.append(_problem(name, places, path[:-1], message))
            continue
        if kind == "missing":
            found.append(_problem(name, places, path[:-1], f"'{path[-1]}' is missing here"))
            continue
        if kind == "value_error":
            message = error["msg"].removeprefix("Value error, ")
        elif kind in ("greater_than", "greater_than_equal", "less_than_equal", "less_than") and _is_length(
            data, path
        ):
            message = f"'{_given(data, path)}' is out of range: {_length_span(error.get('ctx', {}))}"
        elif kind == "string_pattern_mismatch":
            message = f"'{_short(received)}' is not {_WANTED[error['ctx']['pattern']]}"
        else:
            message = _refused(kind, received, error["msg"], error.get("ctx", {}))
        found.append(_problem(name, places, path, message))
    return tuple(found)


def _refused(kind: str, received: Any, said: str, bounds: Mapping[str, Any]) -> str:
    """Why a value is refused, in a setter's words; `said` is what the models' library says of it."""
    wanted = next((words for start, words in _WANTED_KINDS if kind.startswith(start)), None)
    if kind in ("too_short", "too_long"):
        few = kind == "too_short"
        wanted = f"must hold at {'least' if few else 'most'} {bounds['min_length' if few else 'max_length']}"
    if wanted is None:
        wanted = re.sub(r"^(input|value|string|tuple) should", "must", said[0].lower() + said[1:])
    if received is None:
        return f"nothing is given: it {wanted}, or leave the setting out"
    if isinstance(received, list | tuple):
        return f"{'an empty list' if not received else f'a list of {len(received)}'} stands here: it {wanted}"
    if isinstance(received, dict):
        return f"a group of settings stands here ({_short(', '.join(map(str, received)))}): it {wanted}"
    return f"'{_short(received)}': it {wanted}"


def _problem(name: str, places: Places, path: FieldPath, message: str) -> InputProblem:
    known = path
    while known and known not in places:
        known = known[:-1]
    line, column = places.get(known, (1, 1))
    field = _dotted(tuple(part for part in path if part != "[key]"))
    return InputProblem(file=name, line=line, column=column, field=printable(field), message=printable(message))


def _length_span(bounds: Mapping[str, Any]) -> str:
    most = bounds.get("le")
    if most is not None and most != mm(LONGEST_SIDE_MM):
        return f"it is at most {to_mm(most):g} mm ({to_inches(most):.4g} in)"
    return "lengths are more than zero and at most 100 m"


def _is_length(data: Any, path: FieldPath) -> bool:
    """Whether a number out of range was written with a unit, so that only a length can be meant."""
    return any(mark in _given(data, path) for mark in ("m", "i", "f", "'", '"'))


def _given(data: Any, path: FieldPath) -> str:
    for part in path:
        try:
            data = data[part]
        except (KeyError, IndexError, TypeError):
            return "value"
    return _short(data)


def _short(value: Any) -> str:
    text = str(value)
    return text if len(text) <= 60 else text[:57] + "…"


def _dotted(path: FieldPath) -> str:
    text = ""
    for part in path:
        text += f"[{part + 1}]" if isinstance(part, int) else f"{'.' if text else ''}{part}"
    return text


def _did_you_mean(key: str, parent: FieldPath, model: type[BaseModel]) -> str:
    known = sorted(_keys_at(model, parent))
    near = difflib.get_close_matches(key, known, n=1, cutoff=0.6)
    return f"; did you mean '{near[0]}'?" if near else f"; settings here are {', '.join(known)}" if known else ""


def _keys_at(model: type[BaseModel], path: FieldPath) -> set[str]:
    current: Any = model
    for part in path:
        if isinstance(part, int):
            continue
        fields = {field.alias or name: field for name, field in current.model_fields.items()}
        if part not in fields:
            return set()
        current = _model_in(fields[part].annotation)
        if current is None:
            return set()
    return {field.alias or name for name, field in current.model_fields.items()}


def _model_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for part in getattr(annotation, "__args__", ()):
        if (found := _model_in(part)) is not None:
            return found
    return None
