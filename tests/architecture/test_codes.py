"""A code on a finding or an objection means one thing: who looks it up finds one answer."""

import ast
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path

PACKAGE = Path(__file__).parents[2] / "src" / "firstcourse"
CODE = re.compile(r"[A-Z]{3}-\d{3}")
# Codes built in more than one place, each with the one thing they mean there.
ONE_MEANING: Mapping[str, str] = {
    "BRD-101": "a board edge has no member behind it as framed",
    "FAL-204": "a shower floor without a kerb is not level where the room's floor meets it",
    "SUI-401": "not flat enough under the long straightedge, by heights or by gaps read",
    "SUI-402": "not flat enough under the short straightedge, by heights or by gaps read",
    "SUI-404": "what was read cannot tell how flat it is",
    "VER-004": "something stands otherwise than the job gives it",
    "VER-102": "a gap at a side is narrower than asked",
    "VER-602": "a bound lies above what is used",
    "VER-902": "a working that is named is not there",
    "VER-904": "a rule is named or printed that the plan does not rest on so",
    "VER-911": "what is judged is no surface of the plan, or is judged twice",
}


def _built(node: ast.AST, inside: str = "") -> Iterator[tuple[str, str]]:
    """Codes with the function that builds something with them; those only looked for are left out."""
    if isinstance(node, ast.Compare | ast.Set):
        return
    if isinstance(node, ast.FunctionDef):
        inside = node.name
    if isinstance(node, ast.Constant) and isinstance(node.value, str) and CODE.fullmatch(node.value):
        yield node.value, inside
    for child in node.values if isinstance(node, ast.Dict) else ast.iter_child_nodes(node):
        yield from _built(child, inside)


def _places() -> dict[str, set[str]]:
    """Where each code is built: a finding's function, an objection's module."""
    places = defaultdict(set)
    for file in sorted(PACKAGE.rglob("*.py")):
        room = file.relative_to(PACKAGE)
        if room.parts[0] == "papers":  # Papers show findings and build none.
            continue
        for code, function in _built(ast.parse(file.read_text(encoding="utf-8"))):
            objects = code.startswith("VER-")
            if objects == (room.parts[0] == "verify"):
                places[code].add(str(room) if objects else f"{room} {function}")
    return places


def test_a_code_is_built_in_one_place() -> None:
    places = _places()
    assert len(places) > 200
    twice = {code: sorted(built) for code, built in places.items() if len(built) > 1}
    assert {code: built for code, built in twice.items() if code not in ONE_MEANING} == {}
    assert ONE_MEANING.keys() <= twice.keys(), "an exception is no longer needed"
