"""The site pack for a phone that never meets the network: one HTML file that holds all it needs.

Its drawings are those of the papers. What is ticked stays on the phone, under the plan's digest, until it is saved
as a small file; `firstcourse.app.ticked` reads that file.
"""

import base64
import hashlib
import re
from collections.abc import Mapping, Sequence
from functools import cache
from importlib import resources
from typing import Any, NamedTuple

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup, escape

from firstcourse.drawings import Drawing, draw_piece, draw_sheet, to_svg
from firstcourse.drawings.cut_tiles import cut_kinds, cut_scale, draw_cut
from firstcourse.drawings.falls import draw_fall
from firstcourse.drawings.mosaic import mosaics
from firstcourse.papers.frame import page_frame
from firstcourse.papers.phone_items import Section, sections
from firstcourse.papers.ticket_pages import cut_again
from firstcourse.plan import Plan
from firstcourse.units import Tape
from firstcourse.words import speaker_for

FORMAT = "firstcourse-ticked"
"""What a file of ticks says it is."""
LONGEST_ENTRY = 200
"""Letters of what is written into a blank."""
_SHEET_MM, _PIECE_MM = (90.0, 140.0), (110.0, 110.0)
"""Width and height of a drawing of a sheet, of a piece [mm]."""
_FACES = {400: "IBMPlexSans_400Regular.ttf", 600: "IBMPlexSans_600SemiBold.ttf"}
_EXAMPLES = {Tape.INCH: '11-13/16"', Tape.MM: "300 mm"}
_UNITS = {Tape.INCH: '"', Tape.MM: " mm"}
_GROUPS = ("first", "boards", "cuts", "falls", "tile", "buy", "found")
_UNIT = r"(?:mm|m|in|ft|lb|kg|gal|fl\soz|sq\sft|cu\sft|ml|l)"
_MEASURE = re.compile(
    rf"(?:\d+&#39; )?\d[\d/.,-]*(?:&#34;| {_UNIT}\b)|\b[A-Z]\w?-\w{{1,2}}\b",
)
"""A number with its unit, quotes as they stand in a page; a wall or a board by its mark."""
_LAYER_ID = re.compile(r' id="(layer-\w+)"')


def plan_digest(plan: Plan) -> str:
    """SHA-256 of plan.json, which says to what ticks belong."""
    return hashlib.sha256((plan.model_dump_json(by_alias=True, indent=1) + "\n").encode()).hexdigest()


def phone_pack(plan: Plan, *, digest: str, drawn: Mapping[str, str], shared: bool = False) -> bytes:
    """The pack as an HTML file; the same plan gives the same bytes.

    Args:
        plan: A verified plan, or one room's part of it.
        digest: Of the whole plan.
        drawn: Drawings of surfaces as SVG by `boards/`, `tile/` or `heights/` and the surface's id; all others are
            drawn here.
        shared: Of several rooms, only what they share.
    """
    speaker = speaker_for(plan)
    words = speaker.labels("phone-page", file="{file}", example="{example}", shows="{shows}")
    groups = speaker.labels("phone-group")
    parts: dict[str, list[dict[str, Any]]] = {}
    for section in sections(plan, shared=shared):
        key = section.picture
        pictures = [Picture(drawn[key])] if key in drawn else [] if shared else pictures_of(plan, key)
        parts.setdefault(section.group, []).append(_part(section, pictures, words))
    for told in parts.get("first", [])[:1]:
        told["open"] = True
    style, script = _style(), _text("phone_pack.js")
    page = _pages().get_template("phone_pack.html")
    return page.render(
        tongue=speaker.tongue,
        frame=page_frame(plan, speaker, speaker.text("sitepack-name")),
        job=plan.job.name,
        digest=digest,
        format=FORMAT,
        longest=LONGEST_ENTRY,
        unit=_UNITS[speaker.tape],
        example=_EXAMPLES[speaker.tape],
        words=words,
        groups=[{"id": name, "name": groups[name], "parts": parts[name]} for name in _GROUPS if name in parts],
        style=Markup(style),
        style_hash=_hash(style),
        script=Markup(script),
        script_hash=_hash(script),
    ).encode()


class Picture(NamedTuple):
    """A drawing as SVG, and what stands under it where it is one of several."""

    svg: str
    name: str = ""


def _part(section: Section, pictures: Sequence[Picture], words: Mapping[str, str]) -> dict[str, Any]:
    return {
        "title": _whole(section.title),
        "open": False,
        "lines": [_whole(line) for line in section.lines],
        "pictures": [
            {
                "svg": Markup(_LAYER_ID.sub(r' class="\1"', picture.svg.strip())),
                "label": words["enlarge"].replace("{shows}", _shown(picture.svg)),
                "name": picture.name,
            }
            for picture in pictures
        ],
        "tiles": "\n".join((section.tiles or {}).values()),
        "ticks": [
            {"id": item.id, "part": item.part, "strong": _whole(item.strong), "text": _whole(item.text)}
            for item in section.items
        ],
        "after": [_whole(line) for line in section.after],
        "blanks": [
            {"id": entry.id, "kind": entry.kind, "label": _whole(entry.label)} for entry in section.entries
        ],
    }


def _whole(text: str) -> Markup:
    """A text whose lengths, weights and marks are not parted at the end of a line."""
    return Markup(_MEASURE.sub(r'<span class="n">\g<0></span>', str(escape(text))))


def _shown(svg: str) -> str:
    """What a drawing says of itself, for who cannot see it."""
    found = re.search(r"<title>(.*?)</title>", svg)
    return str(Markup(found[1]).unescape()) if found else ""


def pictures_of(plan: Plan, section: str) -> list[Picture]:
    """The drawings of a section, those of whole surfaces apart; none where it has none.

    Args:
        plan: A verified plan.
        section: Its `picture`, such as `sheet/S1`.
    """
    kind, _, name = section.partition("/")
    made: list[tuple[Drawing, str]] = []
    if kind == "sheet":
        made = [(draw_sheet(plan, sheet, room=_SHEET_MM), "") for sheet in plan.sheets if sheet.id == name]
    elif kind == "piece":
        made = [(draw_piece(plan, piece, room=_PIECE_MM), "") for piece in cut_again(plan) if piece.id == name]
    for surface in plan.surfaces:
        if surface.id == name and kind == "falls" and surface.fall is not None:
            made = [(draw_fall(plan, surface, surface.fall), "")]
        elif surface.id == name and kind == "saw":
            shaped = [one for one in cut_kinds(surface, without=mosaics(plan)) if not one.is_fit]
            scale = cut_scale(plan, shaped)
            made = [(draw_cut(plan, one, scale), one.mark) for one in shaped]
    return [Picture(to_svg(drawing), mark) for drawing, mark in made]


def _hash(text: str) -> str:
    return f"sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def _text(name: str) -> str:
    return (resources.files("firstcourse.papers") / name).read_text(encoding="utf-8")


@cache
def _style() -> str:
    faces = []
    for weight, name in _FACES.items():
        data = (resources.files("firstcourse.drawings") / "fonts" / name).read_bytes()
        faces.append(
            f'@font-face {{ font-family: "IBM Plex Sans"; font-weight: {weight}; '
            f"src: url(data:font/ttf;base64,{base64.b64encode(data).decode()}); }}"
        )
    return "\n".join((*faces, _text("phone_pack.css")))


@cache
def _pages() -> Environment:
    return Environment(
        loader=PackageLoader("firstcourse.papers", "."),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
