"""What is handed over on paper: all of it for keeping, and a short one for the owner."""

from collections.abc import Mapping, Sequence
from typing import Any

from firstcourse.handing import Handover
from firstcourse.handing.record import Check
from firstcourse.papers.frame import page_frame
from firstcourse.papers.pages import PAGE_SIZES, Paper, archive
from firstcourse.plan import Plan
from firstcourse.values import measure
from firstcourse.words import Speaker

_SOURCES = ("pages.typ", "handover.typ")
_TITLE = {True: "title", False: "owner_title"}


def handover_paper(
    paper: Paper, plan: Plan, made: Handover, files: Mapping[str, bytes], speaker: Speaker, *, full: bool
) -> bytes:
    """A handover as PDF/A-3b.

    Args:
        paper: Page size.
        plan: The plan that was built.
        made: What is handed over.
        files: By name, what lies within: plan.json, handover.json, photos; nothing of it in the owner's.
        speaker: In whose words and units it is said.
        full: All of it, or the owner's short one.

    Raises:
        PaperError: A warning of the page maker.
    """
    within = files if full else {}
    attached = [
        {
            "name": name,
            "relation": "source" if name == "plan.json" else "data",
            "kind": "image/jpeg" if name.endswith(".jpg") else "application/json",
            "said": name,
        }
        for name in within
    ]
    page = handover_page(plan, made, speaker, full=full)
    return archive(_SOURCES, {**page, "files": attached, "paper": PAGE_SIZES[paper]}, within)


def handover_page(plan: Plan, made: Handover, speaker: Speaker, *, full: bool) -> dict[str, Any]:
    """What the pages print, as plain values."""
    labels, record = speaker.labels("handover-labels"), made.record
    labels["title"] = labels[_TITLE[full]]
    places = {one.id for one in plan.surfaces}

    def place(at: str) -> str:
        return speaker.place(at) if at in places else at

    def thing(what: str) -> str:
        return speaker.text("handover-what", what)

    def heads(table: str) -> list[str]:
        return list(speaker.labels(f"handover-{table}_heads").values())

    latest: dict[tuple[str, str], Check] = {
        (one.what, one.at): one for one in sorted(record.checks, key=lambda one: one.on)
    }
    return {
        "words": labels,
        "frame": page_frame(plan, speaker, labels["title"]),
        "structure": [],
        "tongue": speaker.tongue,
        "job": plan.job.name,
        "business": record.business,
        "day": [record.on.year, record.on.month, record.on.day],
        "invented": speaker.text("handover-invented") if record.invented else "",
        "about": speaker.text("handover-about", full=full, on=record.on.isoformat()),
        "full": full,
        "missing": [
            speaker.text("handover-missing", what=thing(one.what), place=place(one.at), state=one.state)
            for one in made.asked
            if one.state != "held"
        ],
        "proof_heads": heads("proof"),
        "proved": [
            [place(one.at), thing(one.what), found.on.isoformat(), found.who]
            for one in made.asked
            if one.state == "held" and (found := latest.get((one.what, one.at)))
        ],
        "test_heads": heads("test"),
        "tests": [_test(one, place(one.at), speaker) for one in record.tests],
        "batch_heads": heads("batch"),
        "batches": [[one.item, one.lot] for one in record.batches],
        "color_heads": heads("color"),
        "colors": [
            [speaker.text("handover-of", one.of), one.color, place(one.at) if one.at else ""]
            for one in record.colors
        ],
        "spare_heads": heads("spare"),
        "spares": [[one.item, one.amount, one.where] for one in record.spares],
        "changes": speaker.text("handover-changes") if made.changes else "",
        "care": _lines(speaker, "care"),
        "cautions": _lines(speaker, "cautions"),
        "photos": [
            {
                "name": kept.name,
                "said": f"{place(one.at)}: {thing(one.stage)}, {one.on.isoformat()} ({kept.name})",
            }
            for one, kept in zip(record.photos, made.photos, strict=True)
        ],
    }


def handover_lines(page: Mapping[str, Any]) -> Sequence[str]:
    """What is proved and what has no record, as lines of text."""
    lines = [f"{page['words']['title']}: {page['job']}"]
    for title, rows in (("missing", [[one] for one in page["missing"]]), ("proved", page["proved"])):
        if rows:
            lines += ["", page["words"][title], *(f"  {' | '.join(row)}" for row in rows)]
    return lines


def _lines(speaker: Speaker, name: str) -> list[str]:
    return list(speaker.labels(f"handover-{name}").values())


def _test(one: Any, place: str, speaker: Speaker) -> list[str]:
    levels = [
        speaker.text("handover-level", level=measure(float(level), "mm"))
        for level in (one.start_level, one.end_level)
    ]
    times = [time.isoformat(sep=" ", timespec="minutes") for time in (one.starts, one.ends)]
    stood = speaker.text("handover-held", holds=one.end_level >= one.start_level)
    return [place, times[0], levels[0], times[1], levels[1], one.who, stood]
