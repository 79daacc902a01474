"""What findings must say of survey, tile, water, sheets and rules, derived again and held against them."""

from collections.abc import Callable, Iterator

from firstcourse.verify.findings.details import CODES as DETAILS
from firstcourse.verify.findings.details import detail_findings
from firstcourse.verify.findings.laid import CODES as LAID
from firstcourse.verify.findings.laid import laid_findings, may_be_cut
from firstcourse.verify.findings.on_framing import framing_findings
from firstcourse.verify.findings.readings import check_readings
from firstcourse.verify.findings.rule_book import rule_findings
from firstcourse.verify.findings.sheets import sheet_findings
from firstcourse.verify.findings.stood import CODES as STOOD
from firstcourse.verify.findings.stood import stood_findings
from firstcourse.verify.findings.survey import survey_findings
from firstcourse.verify.findings.tiles import CODES as TILES
from firstcourse.verify.findings.tiles import tile_findings
from firstcourse.verify.findings.water import water_findings
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.told import untrue
from firstcourse.verify.verdict import Objection

Wanted = Callable[[Document], Iterator[Said]]
"""Gives each finding that there must be of some codes."""

_CODE = "VER-910"
_WHOLE: tuple[tuple[frozenset[str], Wanted], ...] = (
    (frozenset({"SUR-104", "SUR-105", "SUR-109", "SUR-112"}), survey_findings),
    (STOOD, stood_findings),
    (frozenset({"SUR-108"}), framing_findings),
    (TILES, tile_findings),
    (LAID, laid_findings),
    (DETAILS, detail_findings),
    (frozenset({"WAT-101", "WAT-102", "WAT-103"}), water_findings),
    (frozenset({"QTY-101", "QTY-102"}), sheet_findings),
    (frozenset({"RUL-101", "RUL-102"}), rule_findings),
)
"""By what gives all that must be said, the codes that it gives: nothing beside it may be said under them."""

_PARTLY = frozenset(
    {"SUR-101", "SUR-102", "SUR-103", "SUR-111", *(f"TIL-{number}" for number in (125, 126, 127, 128, 133, 134))}
)
"""Those that are proved in part, here or with what they speak of."""
_OURS = ("SUR-", "TIL-", "QTY-", "WAT-", "RUL-")


def check_findings(plan: Document) -> Iterator[Objection]:
    """Object to a finding that is left out, is said and is not so, or says of anything another value."""
    for codes, wanted in _WHOLE:
        may = may_be_cut(plan) if codes is LAID else ()
        yield from untrue(_CODE, (one for one in plan.findings if one.code in codes), wanted(plan), may)
    yield from check_readings(plan)
    known = _PARTLY.union(*(codes for codes, _ in _WHOLE))
    for one in plan.findings:
        if one.code.startswith(_OURS) and one.code not in known:
            yield Objection(_CODE, one.place, f"has {one.code} said of it, and there is no such finding")
