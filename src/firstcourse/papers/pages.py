"""Make a PDF from page sources and plain values; only the face that comes with us is used."""

import json
from collections.abc import Mapping, Sequence
from functools import cache
from importlib import resources
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Literal

Paper = Literal["letter", "a4"]
PAGE_SIZES: dict[Paper, str] = {"letter": "us-letter", "a4": "a4"}


class PaperError(RuntimeError):
    """The page maker complained; a paper with a fault is never given out."""


class PageMaker:
    """Makes pages in this process; what it keeps for the next pages is in memory until the process ends."""

    def compiled(self, sources: Sequence[str], data: Mapping[str, Any]) -> bytes:
        """A PDF; the same values give the same bytes.

        Args:
            sources: Names of page sources in this package, put together in order.
            data: What they print.

        Raises:
            PaperError: A warning of the page maker, such as a missing letter in the face.
        """
        return self._pdf(sources, json.dumps(data, ensure_ascii=False))

    def marked(self, sources: Sequence[str], data: Mapping[str, Any], label: str) -> list[Any]:
        """The values of all marks of one name on the pages, in order; nothing is printed.

        Args:
            sources: Names of page sources in this package, put together in order.
            data: What they print.
            label: Name of the marks.
        """
        values: list[Any] = json.loads(self._marks(sources, json.dumps(data, ensure_ascii=False), label))
        return values

    def forget(self) -> None:
        """Give back what is kept for the next pages, where that can be."""

    def _pdf(self, sources: Sequence[str], text: str) -> bytes:
        return pdf(sources, text)

    def _marks(self, sources: Sequence[str], text: str, label: str) -> bytes:
        return marks(sources, text, label)


HERE = PageMaker()


def pdf(sources: Sequence[str], text: str) -> bytes:
    """A PDF of page sources.

    Args:
        sources: Names of page sources in this package, put together in order.
        text: What they print, as JSON.

    Raises:
        PaperError: A warning of the page maker, such as a missing letter in the face.
    """
    made, warnings = _compiler().compile_with_warnings(
        _source(sources), format="pdf", timestamp=0, sys_inputs={"data": text}
    )
    if warnings:
        raise PaperError("; ".join(str(warning) for warning in warnings))
    assert isinstance(made, bytes)
    return made


def archive(sources: Sequence[str], data: Mapping[str, Any], files: Mapping[str, bytes]) -> bytes:
    """A PDF for keeping (PDF/A-3b) that may show and hold files; the same values give the same bytes.

    Args:
        sources: Names of page sources in this package, put together in order.
        data: What they print.
        files: By name, what the sources find under `/name`.

    Raises:
        PaperError: A warning of the page maker.
    """
    with TemporaryDirectory() as folder:
        for name, content in files.items():
            (Path(folder) / name).write_bytes(content)
        made, warnings = _compiler().compile_with_warnings(
            _source(sources),
            format="pdf",
            timestamp=0,
            sys_inputs={"data": json.dumps(data, ensure_ascii=False)},
            root=folder,
            pdf_standards=["a-3b"],
        )
    if warnings:
        raise PaperError("; ".join(str(warning) for warning in warnings))
    assert isinstance(made, bytes)
    return made


def marks(sources: Sequence[str], text: str, label: str) -> bytes:
    """The values of all marks of one name on the pages, as JSON.

    Args:
        sources: Names of page sources in this package, put together in order.
        text: What they print, as JSON.
        label: Name of the marks.
    """
    import typst

    found: str = typst.query(
        _source(sources), f"<{label}>", field="value", font_paths=_fonts(), sys_inputs={"data": text}
    )
    return found.encode()


def _source(names: Sequence[str]) -> bytes:
    folder = resources.files("firstcourse.papers")
    return b"\n".join((folder / name).read_bytes() for name in names)


@cache
def _fonts() -> Any:
    import typst

    with resources.as_file(resources.files("firstcourse.drawings") / "fonts") as folder:
        return typst.Fonts(include_system_fonts=False, font_paths=[str(folder)])


@cache
def _compiler() -> Any:
    import typst

    return typst.Compiler(font_paths=_fonts())
