"""Two changes of one document put together: of different fields they merge, of the same field somebody is asked.

What is compared are values, not lines: a comment or a blank is never in the way, and those of both sides are kept
where the lines allow it.
"""

import difflib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from enum import Enum, StrEnum

import yaml

from firstcourse.errors import FirstcourseError
from firstcourse.job.editing import edited_text

WHOLE = ""
"""As a field: the whole document."""
_NAMES = ("id", "name", "wall")
"""What an item of a list is known by: where that changed it is another item."""


class _Nothing(Enum):
    NOTHING = "nothing"


type _Tree = str | list[_Tree] | dict[str, _Tree] | None
type _Found = _Tree | _Nothing
type _Group = dict[str, _Tree]


class Side(StrEnum):
    """Whose value is taken."""

    THEIRS = "theirs"
    MINE = "mine"


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """A field that both changed, each otherwise.

    Attributes:
        field: As messages name it; `WHOLE` where the two cannot be put together at all.
        before: What stood there, as it is typed; empty where nothing did.
        theirs: What they have there now.
        mine: What I have there.
    """

    field: str
    before: str
    theirs: str
    mine: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Merge:
    """What came of putting two changes together.

    Attributes:
        text: The document with both changes; where something clashes, theirs as it stands.
        clashes: Fields that somebody must decide.
    """

    text: str
    clashes: tuple[Clash, ...] = ()


def merged(base: str, theirs: str, mine: str, chosen: Mapping[str, Side] | None = None) -> Merge:
    """Put two changes of one document together; all three can be read.

    Args:
        base: The document that both began with.
        theirs: As it stands now.
        mine: As I would save it.
        chosen: By field, whose value is taken where both changed it.

    Returns:
        A document that says what both say; whether a job can say it is not checked here.
    """
    chosen = chosen or {}
    if WHOLE in chosen:
        return Merge(text=mine if chosen[WHOLE] is Side.MINE else theirs)
    there, here = _read(theirs), _read(mine)
    both = _Both(chosen)
    wanted = both.merged(_read(base), there, here, "", item=False)
    if both.clashes:
        return Merge(text=theirs, clashes=tuple(both.clashes))
    together = _by_lines(base, theirs, mine)
    if together is not None and _says(together, wanted):
        return Merge(text=together)
    for text, value in ((theirs, there), (mine, here)):
        edited = _edited(text, value, wanted)
        if edited is not None:
            return Merge(text=edited)
    return Merge(text=theirs, clashes=(Clash(field=WHOLE, before=base, theirs=theirs, mine=mine),))


@dataclass(slots=True)
class _Both:
    """Merges values, and notes where it cannot."""

    chosen: Mapping[str, Side]
    clashes: list[Clash] = field(default_factory=list)

    def merged(self, base: _Found, theirs: _Found, mine: _Found, name: str, *, item: bool) -> _Found:
        """The value that both want; theirs where they clash."""
        if mine in (base, theirs):
            return theirs
        if theirs == base:
            return mine
        if name in self.chosen:
            return mine if self.chosen[name] is Side.MINE else theirs
        if isinstance(base, dict) and isinstance(theirs, dict) and isinstance(mine, dict):
            known = all(base.get(one) == side.get(one) for one in _NAMES for side in (theirs, mine))
            if known or not item:
                return self._groups(base, theirs, mine, name)
        match base, theirs, mine:
            case list(), list(), list() if len(base) == min(len(theirs), len(mine)):
                return self._lists(base, theirs, mine, name)
        self.clashes.append(Clash(field=name, before=_shown(base), theirs=_shown(theirs), mine=_shown(mine)))
        return theirs

    def _groups(self, base: _Group, theirs: _Group, mine: _Group, name: str) -> _Tree:
        nothing = _Nothing.NOTHING
        found = {
            key: self.merged(
                base.get(key, nothing),
                theirs.get(key, nothing),
                mine.get(key, nothing),
                f"{name}.{key}" if name else key,
                item=False,
            )
            for key in dict.fromkeys((*theirs, *mine))
        }
        return {key: value for key, value in found.items() if not isinstance(value, _Nothing)}

    def _lists(self, base: list[_Tree], theirs: list[_Tree], mine: list[_Tree], name: str) -> _Tree:
        """Lists of which at most one got more items at its end."""
        same = [
            self.merged(was, there, here, f"{name}[{number}]", item=True)
            for number, (was, there, here) in enumerate(zip(base, theirs, mine, strict=False), 1)
        ]
        kept = [one for one in same if not isinstance(one, _Nothing)]
        return [*kept, *theirs[len(base) :], *mine[len(base) :]]


def _read(text: str) -> _Tree:
    node = yaml.compose(text, yaml.CSafeLoader)
    return None if node is None else _plain(node)


def _plain(node: yaml.Node) -> _Tree:
    """A node's value, each scalar as the text that was typed."""
    if isinstance(node, yaml.MappingNode):
        return {str(key.value): _plain(value) for key, value in node.value}
    if isinstance(node, yaml.SequenceNode):
        return [_plain(value) for value in node.value]
    return str(node.value)


def _says(text: str, wanted: _Found) -> bool:
    try:
        return _read(text) == wanted
    except yaml.YAMLError:
        return False


def _shown(value: _Found) -> str:
    if isinstance(value, _Nothing) or value is None:
        return ""
    if isinstance(value, str):
        return value
    said: str = yaml.safe_dump(value, allow_unicode=True, sort_keys=False, default_flow_style=None, width=100)
    return said.strip()


def _edited(text: str, value: _Tree, wanted: _Found) -> str | None:
    """A text edited field by field until it says what is wanted; None where it cannot be."""
    try:
        for name, one in _edits(value, wanted, ""):
            text = edited_text(text, name, one)
    except FirstcourseError:
        return None
    return text if _says(text, wanted) else None


def _edits(value: _Tree, wanted: _Found, name: str) -> Iterator[tuple[str, _Tree]]:
    if value == wanted or isinstance(wanted, _Nothing):
        return
    if isinstance(value, dict) and isinstance(wanted, dict) and value.keys() <= wanted.keys():
        for key, one in wanted.items():
            inner = f"{name}.{key}" if name else key
            if key in value:
                yield from _edits(value[key], one, inner)
            else:
                yield inner, one
    elif isinstance(value, list) and isinstance(wanted, list) and len(value) <= len(wanted):
        for number, one in enumerate(wanted, 1):
            if number <= len(value):
                yield from _edits(value[number - 1], one, f"{name}[{number}]")
            else:
                yield f"{name}[{number}]", one
    else:
        yield name, wanted


def _by_lines(base: str, theirs: str, mine: str) -> str | None:
    """Both changes by lines; None where they touch the same ones."""
    old, one, two = (text.splitlines(keepends=True) for text in (base, theirs, mine))
    kept_one, kept_two = _kept(old, one), _kept(old, two)
    out: list[str] = []
    at_old = at_one = at_two = 0
    for line in (*sorted(kept_one.keys() & kept_two.keys()), len(old)):
        end_one, end_two = kept_one.get(line, len(one)), kept_two.get(line, len(two))
        was, first, second = old[at_old:line], one[at_one:end_one], two[at_two:end_two]
        if second in (first, was):
            out += first
        elif first == was:
            out += second
        else:
            return None
        out += old[line : line + 1]
        at_old, at_one, at_two = line + 1, end_one + 1, end_two + 1
    return "".join(out)


def _kept(old: Sequence[str], new: Sequence[str]) -> dict[int, int]:
    """Lines that stayed: by their number before, their number after."""
    blocks = difflib.SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks()
    return {block.a + k: block.b + k for block in blocks for k in range(block.size)}
