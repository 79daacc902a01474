"""A drawing as SVG: real text, one group a layer, millimetres."""

from xml.etree import ElementTree as ET

from firstcourse.drawings.model import DASHES_MM, GREYS, PENS_MM, XY, Drawing

_FACE = "IBM Plex Sans"
_MARGIN_MM = 1.0


def svg_size(drawing: Drawing) -> tuple[float, float]:
    """Width and height of the drawing's page [mm]."""
    left, lower, right, upper = drawing.box
    return round(right - left + 2 * _MARGIN_MM, 3), round(upper - lower + 2 * _MARGIN_MM, 3)


def to_svg(drawing: Drawing) -> str:
    """The drawing as an SVG document, true to size in millimetres."""
    left, _, _, upper = drawing.box
    width, height = svg_size(drawing)

    def at(point: XY) -> tuple[str, str]:
        return _number(point[0] - left + _MARGIN_MM), _number(upper - point[1] + _MARGIN_MM)

    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": f"{_number(width)}mm",
            "height": f"{_number(height)}mm",
            "viewBox": f"0 0 {_number(width)} {_number(height)}",
            "role": "img",
            "aria-label": drawing.title,
            "font-family": f"'{_FACE}', sans-serif",
        },
    )
    ET.SubElement(root, "title").text = drawing.caption
    groups: dict[str, ET.Element] = {}
    for layer, pen in PENS_MM.items():
        if layer == "text":
            continue
        style = {"id": f"layer-{layer}", "fill": "none", "stroke": _colour(layer), "stroke-width": _number(pen)}
        if layer in DASHES_MM:
            style["stroke-dasharray"] = " ".join(_number(dash) for dash in DASHES_MM[layer])
        groups[layer] = ET.Element("g", style)
    for line in drawing.lines:
        (x1, y1), (x2, y2) = at(line.a), at(line.b)
        ET.SubElement(groups[line.layer], "line", {"x1": x1, "y1": y1, "x2": x2, "y2": y2})
    for poly in drawing.polys:
        points = " ".join(",".join(at(point)) for point in poly.points)
        named = {"data-name": poly.name} if poly.name else {}
        ET.SubElement(groups[poly.layer], "polygon", {"points": points, **named})
    for circle in drawing.circles:
        cx, cy = at(circle.centre)
        ET.SubElement(groups[circle.layer], "circle", {"cx": cx, "cy": cy, "r": _number(circle.radius)})
    root.extend(group for group in groups.values() if len(group))
    texts = ET.SubElement(root, "g", {"id": "layer-text", "fill": "black"})
    for text in drawing.texts:
        x, y = at(text.at)
        # A white edge round the letters keeps them legible where lines run behind.
        style = {
            "x": x,
            "y": _number(float(y) + text.size * 0.35),
            "font-size": _number(text.size),
            "text-anchor": text.anchor,
            "stroke": "white",
            "stroke-width": _number(text.size * 0.3),
            "stroke-linejoin": "round",
            "paint-order": "stroke",
        }
        if text.bold:
            style["font-weight"] = "600"
        if text.upright:
            style["x"] = _number(float(x) + text.size * 0.35)
            style["y"] = y
            style["transform"] = f"rotate(-90 {style['x']} {style['y']})"
        ET.SubElement(texts, "text", style).text = text.text
    return ET.tostring(root, encoding="unicode") + "\n"


def _colour(layer: str) -> str:
    lightness = round(255 * GREYS.get(layer, 0.0))
    return f"rgb({lightness},{lightness},{lightness})" if lightness else "black"


def _number(value: float) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".") or "0"
