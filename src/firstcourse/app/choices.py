"""What is chosen for a job: its sheets, its tile, which surface gets which tile, how its floors are framed."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from firstcourse.app.fields import SurfaceField, checked, surface_fields, typed
from firstcourse.app.session import Session
from firstcourse.job import BoardedFloor, FieldValue, Job, edited_text, exact_length
from firstcourse.units import Tape

SHEET_FIELDS = ("id", "width", "length", "thickness")
TILE_FIELDS = ("id", "width", "height", "thickness", "joint")
SERVES = ("floor", "wall", "ceiling")
PATTERNS = ("stacked", "running", "diagonal", "herringbone")
FIRST_TILES = ("floor tile", "wall tile")
"""What the tiles of a job that has none are called at first; each is offered for its surfaces."""
FRAMING_FIELDS = ("parallel_to", "spacing", "first")


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A sheet or a tile as its form shows it.

    Attributes:
        number: Its place in the document's list, from 1; one more than there are for a new one.
        values: Field to what stands there.
        serves: Of a sheet: surfaces that it serves.
    """

    number: int
    values: Mapping[str, str]
    serves: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceChoice:
    """Which tile a surface gets.

    Attributes:
        patterns: Those that may be chosen; the one in the document among them.
        framing: Of a floor: how its joists run; None for others, and for joists given one by one.
    """

    where: SurfaceField
    tile: str
    pattern: str
    patterns: Sequence[str]
    framing: Mapping[str, str] | None


def sheet_rows(job: Job) -> tuple[Row, ...]:
    """The sheets of a job, and an empty row."""
    rows = [
        Row(
            number=number,
            values={
                "id": one.id,
                "width": exact_length(one.size[0], job.tape),
                "length": exact_length(one.size[1], job.tape),
                "thickness": exact_length(one.thickness, job.tape),
            },
            serves=tuple(kind.value for kind in one.used_for) or SERVES,
        )
        for number, one in enumerate(job.stock, start=1)
    ]
    return (*rows, Row(number=len(rows) + 1, values={}, serves=()))


def tile_rows(job: Job) -> tuple[Row, ...]:
    """The tiles of a job, and an empty row; for a job that has none, a row each for its floors and its walls."""
    if not job.tiles:
        return tuple(Row(number=number, values={"id": name}) for number, name in enumerate(FIRST_TILES, start=1))
    rows = [
        Row(
            number=number,
            values={
                "id": one.id,
                "width": exact_length(one.size[0], job.tape),
                "height": exact_length(one.size[1], job.tape),
                "thickness": exact_length(one.thickness, job.tape),
                "joint": "" if one.joint is None else exact_length(one.joint, job.tape),
            },
        )
        for number, one in enumerate(job.tiles, start=1)
    ]
    return (*rows, Row(number=len(rows) + 1, values={}))


def surface_choices(job: Job) -> tuple[SurfaceChoice, ...]:
    """Every surface of a job with what is chosen for it."""
    found = []
    for where in surface_fields(job).values():
        tiling = where.said.tiling
        pattern = "stacked" if tiling is None else tiling.pattern
        found.append(
            SurfaceChoice(
                where=where,
                tile=_first_tile(job, where) if tiling is None else tiling.tile or "",
                pattern=pattern,
                patterns=tuple(dict.fromkeys((*PATTERNS, pattern))),
                framing=_framing(where, job.tape),
            )
        )
    return tuple(found)


def chosen(session: Session, form: Mapping[str, str]) -> Session:
    """The document with what a form says; what it leaves empty stays as it is.

    Args:
        session: The document; it stays as it is.
        form: Field to what was typed, each named as the page names it.

    Raises:
        JobError: The document would say something a job cannot say.
    """
    text = session.text
    for field, value in _sets(session.job, form):
        text = edited_text(text, field, value, name=session.name)
    return session if text == session.text else checked(text, session)


def _framing(where: SurfaceField, tape: Tape) -> dict[str, str] | None:
    if where.part != "floor" or not isinstance(where.said, BoardedFloor):
        return None
    framing = where.said.framing
    if framing is None:
        return dict.fromkeys(FRAMING_FIELDS, "")
    if framing.spacing is None or framing.first is None:
        return None
    return {
        "parallel_to": framing.parallel_to,
        "spacing": exact_length(framing.spacing, tape),
        "first": exact_length(framing.first, tape),
    }


def _sets(job: Job, form: Mapping[str, str]) -> Iterator[tuple[str, FieldValue]]:
    tape = job.tape
    yield from _rows("stock", sheet_rows(job), "sheet", SHEET_FIELDS, form, tape)
    yield from _rows("tiles", tile_rows(job), "tile", TILE_FIELDS, form, tape)
    first = _first_named(job, form)
    for choice in surface_choices(job):
        yield from _surface(choice, form, tape, first)


def _first_tile(job: Job, where: SurfaceField) -> str:
    """Which tile is offered for a surface that has none."""
    return "" if job.tiles else FIRST_TILES[0 if where.part == "floor" else 1]


def _first_named(job: Job, form: Mapping[str, str]) -> dict[str, str]:
    """The first tiles of a job, by their names as offered: those typed; empty where none is given."""
    if job.tiles:
        return {}
    return {
        row.values["id"]: " ".join(form.get(f"tile {row.number} id", "").split())
        if _is_given(_typed(form, f"tile {row.number}", TILE_FIELDS, job.tape))
        else ""
        for row in tile_rows(job)
    }


def _is_given(item: Mapping[str, str]) -> bool:
    """Whether more than a name was typed."""
    return bool(item.keys() - {"id"})


def _rows(
    key: str, rows: Sequence[Row], prefix: str, names: Sequence[str], form: Mapping[str, str], tape: Tape
) -> Iterator[tuple[str, FieldValue]]:
    """What is to be set of a list: its items that changed, then new ones after them."""
    there = [row for row in rows if "thickness" in row.values]
    for row in there:
        yield from _changed(key, row, _typed(form, f"{prefix} {row.number}", names, tape), form)
    new: list[FieldValue] = []
    for row in rows[len(there) :]:
        given = _typed(form, f"{prefix} {row.number}", names, tape)
        if _is_given(given) or (given and not row.values):
            new.append(_new(key, row, given, form))
    if there:
        yield from ((f"{key}[{number}]", item) for number, item in enumerate(new, start=len(there) + 1))
    elif new:
        yield key, new


def _typed(form: Mapping[str, str], prefix: str, names: Sequence[str], tape: Tape) -> dict[str, str]:
    given = {name: form.get(f"{prefix} {name}", "") for name in names}
    return {
        name: " ".join(text.split()) if name in ("id", "parallel_to") else typed(text, tape)
        for name, text in given.items()
        if text.strip()
    }


def _serves(row: Row, form: Mapping[str, str]) -> list[FieldValue]:
    return [one for one in SERVES if form.get(f"sheet {row.number} for {one}")]


def _other_side(key: str) -> str:
    return "length" if key == "stock" else "height"


def _new(key: str, row: Row, given: Mapping[str, str], form: Mapping[str, str]) -> FieldValue:
    """A sheet or a tile that was not there before."""
    item: dict[str, FieldValue] = {name: given[name] for name in ("id", "thickness", "joint") if name in given}
    item["size"] = [given.get("width", ""), given.get(_other_side(key), "")]
    if key == "stock" and (serves := _serves(row, form)):
        item["for"] = serves
    return item


def _changed(
    key: str, row: Row, given: Mapping[str, str], form: Mapping[str, str]
) -> Iterator[tuple[str, FieldValue]]:
    """What is to be set of a sheet or a tile that is there."""
    other, serves = _other_side(key), _serves(row, form)
    changed = {name: value for name, value in given.items() if value != row.values.get(name)}
    if "width" in changed or other in changed:
        sides: list[FieldValue] = [given.get(name, row.values[name]) for name in ("width", other)]
        yield f"{key}[{row.number}].size", sides
    for name in ("id", "thickness", "joint"):
        if name in changed:
            yield f"{key}[{row.number}].{name}", changed[name]
    if key == "stock" and serves and tuple(serves) != row.serves:
        yield f"{key}[{row.number}].for", serves


def _surface(
    choice: SurfaceChoice, form: Mapping[str, str], tape: Tape, first: Mapping[str, str]
) -> Iterator[tuple[str, FieldValue]]:
    where = choice.where
    tile, pattern = form.get(f"tile of {where.surface}"), form.get(f"pattern of {where.surface}")
    tile = tile if tile is None else first.get(tile, tile)
    tiling = where.said.tiling
    if tile and tiling is None:
        yield f"{where.field}.tiling", {"tile": tile, "pattern": pattern or choice.pattern}
    elif tile == "" and tiling is not None and tiling.tile is not None:
        yield f"{where.field}.tiling", None
    elif tiling is not None:
        if tile and tile != choice.tile:
            yield f"{where.field}.tiling.tile", tile
        if pattern and pattern != choice.pattern:
            yield f"{where.field}.tiling.pattern", pattern
    if choice.framing is None:
        return
    given = _typed(form, f"framing of {where.surface}", FRAMING_FIELDS, tape)
    if not any(choice.framing.values()):
        if given.get("spacing") or given.get("first"):
            yield f"{where.field}.framing", dict(given)
        return
    for name, value in given.items():
        if value != choice.framing[name]:
            yield f"{where.field}.framing.{name}", value
