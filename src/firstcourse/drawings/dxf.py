"""A drawing as DXF: site millimetres in model space, layers as on paper, running dimensions as text."""

import io

from firstcourse.drawings.model import DASHES_MM, GREYS, PENS_MM, Drawing

_HUNDREDTHS = (0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100)
_BLACK, _GREY = 7, 8
"""Colours of the DXF index: that of the paper's ink, and dark grey."""


def to_dxf(drawing: Drawing) -> str:
    """The drawing as a DXF document (R2010) at true size in millimetres; the same drawing gives the same text."""
    import ezdxf
    from ezdxf.enums import TextEntityAlignment

    ezdxf.options.write_fixed_meta_data_for_testing = True
    document = ezdxf.new("R2010", setup=False, units=4)
    for layer, pen in PENS_MM.items():
        weight = min(_HUNDREDTHS, key=lambda value: abs(value - pen * 100))
        style = "CONTINUOUS"
        if layer in DASHES_MM:
            style = layer.upper()
            dashes = DASHES_MM[layer]
            pattern = [dash * drawing.scale * (1 if index % 2 == 0 else -1) for index, dash in enumerate(dashes)]
            document.linetypes.add(style, [sum(dashes) * drawing.scale, *pattern])
        colour = _GREY if layer in GREYS else _BLACK
        document.layers.add(layer.upper(), color=colour, lineweight=weight, linetype=style)
    space = document.modelspace()
    scale = drawing.scale
    for line in drawing.lines:
        space.add_line(
            (line.a[0] * scale, line.a[1] * scale),
            (line.b[0] * scale, line.b[1] * scale),
            dxfattribs={"layer": line.layer.upper()},
        )
    for poly in drawing.polys:
        space.add_lwpolyline(
            [(x * scale, y * scale) for x, y in poly.points],
            close=True,
            dxfattribs={"layer": poly.layer.upper()},
        )
    for circle in drawing.circles:
        space.add_circle(
            (circle.centre[0] * scale, circle.centre[1] * scale),
            circle.radius * scale,
            dxfattribs={"layer": circle.layer.upper()},
        )
    anchors = {
        "start": TextEntityAlignment.MIDDLE_LEFT,
        "middle": TextEntityAlignment.MIDDLE_CENTER,
        "end": TextEntityAlignment.MIDDLE_RIGHT,
    }
    for text in drawing.texts:
        entity = space.add_text(
            text.text,
            height=text.size * 0.7 * scale,
            rotation=90 if text.upright else 0,
            dxfattribs={"layer": "TEXT"},
        )
        entity.set_placement((text.at[0] * scale, text.at[1] * scale), align=anchors[text.anchor])
    # Left to itself the library lists the classes in use in the order of a set, which each process hashes anew.
    for name in sorted(document.entitydb.dxf_types_in_use()):
        document.classes.add_class(name)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()
