"""A proposal on paper, in words that a homeowner reads."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from firstcourse.papers.frame import page_frame
from firstcourse.papers.order_page import money_text
from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.papers.room_pages import room_pages
from firstcourse.papers.tile_words import named_pattern
from firstcourse.plan import Plan
from firstcourse.pricing import Proposal, filled
from firstcourse.pricing.proposal import SurfaceScope
from firstcourse.units import format_length
from firstcourse.values import measure
from firstcourse.words import Speaker


def proposal_paper(paper: Paper, data: dict[str, Any]) -> bytes:
    """A proposal as a PDF.

    Args:
        paper: Page size.
        data: What `proposal_page` gives.

    Raises:
        PaperError: A warning of the page maker.
    """
    return HERE.compiled(("pages.typ", "proposal.typ"), {**data, "paper": PAGE_SIZES[paper]})


def proposal_page(plan: Plan, proposal: Proposal, speaker: Speaker) -> dict[str, Any]:
    """What the pages print, as plain values.

    Args:
        plan: The plan that is offered.
        proposal: The offer.
        speaker: In whose words and units it is said.

    Raises:
        InputValueError: A text of the firm's asks for a field that has no value.
    """
    labels = speaker.labels("proposal-labels")
    business, values = proposal.words.business, field_values(plan, proposal)
    stops = [one for one in speaker.findings(plan.findings) if f"{one.severity}" == "stop"]
    known = bool(proposal.starts and proposal.ends)
    ours = {
        "words": labels,
        "frame": page_frame(plan, speaker, labels["title"]),
        "valid": speaker.text("proposal-valid", until=proposal.valid_until),
        "when": speaker.text("proposal-when", starts=proposal.starts, ends=proposal.ends, known=known),
        "invented": speaker.text("proposal-invented") if proposal.words.invented else "",
        "stops": [f"{one.where}: {one.message} {one.remedy}".rstrip() for one in stops],
        "scope_heads": list(speaker.labels("proposal-scope_heads").values()),
        "tile_heads": list(speaker.labels("proposal-tile_heads").values()),
        "rooms": [
            {
                "name": room.room,
                "rows": [_row(one, speaker) for one in room.surfaces],
                "untouched": _untouched(room.untouched, speaker),
            }
            for room in proposal.rooms
        ],
        "pages": room_pages(plan),
    }
    said = {**speaker.fields(ours), "structure": [], "tongue": speaker.tongue, "job": plan.job.name}
    own = proposal.words
    texts = {name: [filled(text, values) for text in getattr(own, name)] for name in _LISTS}
    return {
        **said,
        "business": business.name,
        "address": [one for one in (business.address, business.phone, business.licence) if one],
        "to": [one for one in (own.client or plan.job.site.client, plan.job.site.address) if one],
        "opening": filled(own.opening, values) if own.opening else speaker.text("proposal-opening"),
        "closing": filled(own.closing, values) if own.closing else "",
        "total": f"{proposal.currency} {money_text(proposal.total)}",
        "parts": [
            {"title": labels[name], "lines": [*_codes(name, getattr(proposal, name), speaker), *texts[name]]}
            for name in ("included", "excluded", "assumed")
        ],
        "cautions": [*speaker.labels("proposal-cautions").values(), *texts["cautions"]],
        "prices": list(_prices(proposal, speaker)),
        "found": [
            [speaker.text("proposal-found", one.work), _each(one.price, one.unit, speaker)]
            for one in proposal.found
        ],
        "options": [[one.text, f"+ {money_text(one.price)}"] for one in own.options],
        "payments": [
            [speaker.text("proposal-stage", one.at), f"{one.percent:f} %", money_text(one.amount)]
            for one in proposal.payments
        ],
    }


_LISTS = ("included", "excluded", "assumed", "cautions")


def field_values(plan: Plan, proposal: Proposal) -> dict[str, str]:
    """What the fields of the firm's texts stand for; empty where there is nothing to say."""
    return {
        "job": plan.job.name,
        "client": proposal.words.client or plan.job.site.client,
        "address": plan.job.site.address,
        "business": proposal.words.business.name,
        "date": proposal.on,
        "valid_until": proposal.valid_until,
        "price": money_text(proposal.price),
        "tax": money_text(proposal.total - proposal.price),
        "total": money_text(proposal.total),
        "currency": proposal.currency,
    }


def proposal_lines(page: dict[str, Any]) -> Iterator[str]:
    """A proposal as lines of text, as the terminal prints it."""
    yield f"{page['words']['title']}: {page['job']}"
    for room in page["rooms"]:
        yield from ("", room["name"], *(f"  {' | '.join(row)}" for row in room["rows"]))
    for part in page["parts"]:
        yield from ("", part["title"], *(f"  - {line}" for line in part["lines"]))
    for name in ("prices", "found", "options", "payments"):
        if page[name]:
            title = page["words"]["price" if name == "prices" else name]
            yield from ("", title, *(f"  {' | '.join(row)}" for row in page[name]))
    yield from ("", page["when"], page["valid"])


def _codes(name: str, codes: tuple[str, ...], speaker: Speaker) -> list[str]:
    return [speaker.say(speaker.text(f"proposal-{name}", code)) for code in codes]


def _untouched(walls: tuple[str, ...], speaker: Speaker) -> str:
    return speaker.text("proposal-untouched", walls=", ".join(map(speaker.within, walls))) if walls else ""


def _row(scope: SurfaceScope, speaker: Speaker) -> list[str]:
    built = [speaker.text("proposal-built", "boards")] if scope.boards else []
    if scope.membrane:
        built.append(speaker.text("proposal-built", f"membrane_{scope.membrane}"))
    for one in scope.tiled:
        pattern = named_pattern(one.pattern, one.angle, speaker)
        joint = format_length(one.joint, speaker.tape)
        told = {"tiles": ", ".join(one.tiles), "pattern": pattern, "joint": joint}
        built.append(speaker.text("proposal-built", "tile", **told))
    area = speaker.text("proposal-area", area=measure(float(scope.area), "m2"))
    return [speaker.within(scope.surface), "; ".join(built), area]


def _prices(proposal: Proposal, speaker: Speaker) -> Iterator[list[str]]:
    for one in proposal.sections:
        yield [speaker.text("proposal-section", one.section), money_text(one.amount)]
    yield [speaker.text("price-before_tax"), money_text(proposal.price)]
    for tax in proposal.taxes:
        yield [speaker.text("price-tax", of=tax.of), money_text(tax.amount)]
    yield [speaker.text("price-total"), f"{proposal.currency} {money_text(proposal.total)}"]


def _each(price: Decimal, unit: str, speaker: Speaker) -> str:
    return speaker.text("proposal-each", unit.replace(" ", "_"), price=money_text(price))
