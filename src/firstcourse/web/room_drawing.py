"""A room unfolded on the screen: its floor with the walls folded out, each surface one thing to tap."""

from collections.abc import Mapping, Sequence
from urllib.parse import quote
from xml.etree.ElementTree import Element, SubElement, tostring

from firstcourse.app.room_view import PlacedSurface
from firstcourse.units import TICKS_PER_MM

_SVG = "http://www.w3.org/2000/svg"
_EDGE_SHARE, _TEXT_SHARE = 0.03, 0.034


def draw_unfolded(placed: Sequence[PlacedSurface], names: Mapping[str, str], base: str, label: str) -> str:
    """All surfaces of a room as one SVG, without colours: tile where there is any, boards elsewhere.

    Args:
        placed: Where each lies, y upwards.
        names: What each is called.
        base: Address that a surface's id is put after.
        label: What the drawing is called to those who don't see it.
    """
    corners = [point for one in placed for point in one.ring(one.whole)]
    left, right = (pick(x for x, _ in corners) for pick in (min, max))
    low, top = (pick(y for _, y in corners) for pick in (min, max))
    wide, high = right - left, top - low
    edge, text = max(wide, high) * _EDGE_SHARE, max(wide, high) * _TEXT_SHARE
    box = f"{left - edge:.1f} {-edge:.1f} {wide + 2 * edge:.1f} {high + 2 * edge:.1f}"
    svg = Element(
        "svg", {"xmlns": _SVG, "viewBox": box, "class": "unfolded", "aria-label": label, "role": "group"}
    )
    svg.set("font-size", f"{text:.1f}")

    def points(ring: Sequence[tuple[float, float]]) -> str:
        return " ".join(f"{x:.1f},{top - y:.1f}" for x, y in ring)

    for one in placed:
        surface = one.surface
        link = SubElement(svg, "a", {"href": base + quote(surface.id), "aria-label": names[surface.id]})
        SubElement(link, "polygon", {"points": points(one.ring(one.whole)), "class": "ground"})
        if surface.extent and surface.extent != surface.outline:
            SubElement(link, "polygon", {"points": points(one.ring(surface.outline)), "class": "boarded"})
        for tile in surface.tiles:
            SubElement(link, "polygon", {"points": points(one.ring(tile.outline)), "class": "tile"})
        for board in surface.boards if not surface.tiles else ():
            SubElement(link, "polygon", {"points": points(one.ring(board.outline)), "class": "board"})
        for opening in surface.openings:
            if opening.outline is not None:
                SubElement(link, "polygon", {"points": points(one.ring(opening.outline)), "class": "open"})
            elif opening.centre is not None and opening.diameter is not None:
                (x, y), reach = one.at(opening.centre), opening.diameter / TICKS_PER_MM / one.scale / 2
                SubElement(
                    link,
                    "circle",
                    {"cx": f"{x:.1f}", "cy": f"{top - y:.1f}", "r": f"{reach:.1f}", "class": "open"},
                )
        ring = one.ring(one.whole)
        x, y = (sum(point[axis] for point in ring) / len(ring) for axis in (0, 1))
        turned = abs(one.across[1]) > abs(one.across[0])
        place = {"x": f"{x:.1f}", "y": f"{top - y + text / 3:.1f}", "class": "name"}
        if turned:
            place["transform"] = f"rotate(-90 {x:.1f} {top - y:.1f})"
        name = SubElement(link, "text", place)
        name.text = names[surface.id]
    return tostring(svg, encoding="unicode")
