"""Make a PDF from page sources and plain values; only the face that comes with us is used."""

import json
from collections.abc import Mapping, Sequence
from functools import cache
from importlib import resources
from typing import Any, Literal

Paper = Literal["letter", "a4"]
PAGE_SIZES: dict[Paper, str] = {"letter": "us-letter", "a4": "a4"}


class PaperError(RuntimeError):
    """The page maker complained; a paper with a fault is never given out."""


def compiled(sources: Sequence[str], data: Mapping[str, Any]) -> bytes:
    """A PDF; the same values give the same bytes.

    Args:
        sources: Names of page sources in this package, put together in order.
        data: What they print.

    Raises:
        PaperError: A warning of the page maker, such as a missing letter in the face.
    """
    folder = resources.files("firstcourse.documents")
    source = b"\n".join((folder / name).read_bytes() for name in sources)
    text = json.dumps(data, ensure_ascii=False)
    pdf, warnings = _compiler().compile_with_warnings(source, format="pdf", timestamp=0, sys_inputs={"data": text})
    if warnings:
        raise PaperError("; ".join(str(warning) for warning in warnings))
    assert isinstance(pdf, bytes)
    return pdf


@cache
def _compiler() -> Any:
    import typst

    with resources.as_file(resources.files("firstcourse.drawings") / "fonts") as folder:
        fonts = typst.Fonts(include_system_fonts=False, font_paths=[str(folder)])
        return typst.Compiler(font_paths=fonts)
