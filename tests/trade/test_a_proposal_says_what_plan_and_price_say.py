"""A proposal promised on a nod: scope, sums, payments and days follow from plan and price, or it is refused."""

import json
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from example_plans import EXAMPLES, plan_of
from firstcourse.app.pricing import price_document
from firstcourse.errors import InputValueError, JobError
from firstcourse.papers.pages import PAGE_SIZES
from firstcourse.papers.proposal import proposal_page, proposal_paper
from firstcourse.plan import Plan
from firstcourse.pricing import Proposal, Wording, offer, propose, read_book, read_wording
from firstcourse.pricing.proposal import shared
from firstcourse.verify import verify_proposal
from firstcourse.words import speaker_for

WORDS = (EXAMPLES / "proposal-words.yaml").read_bytes()
BUSINESS = "business: {name: Made up, address: Nowhere 1, phone: none}\n"


@pytest.fixture(scope="module")
def made() -> tuple[Plan, str, str, Proposal]:
    plan = plan_of("tub-bathroom")
    document = plan.model_dump_json(by_alias=True, indent=1) + "\n"
    priced = offer(plan, document, read_book((EXAMPLES / "prices.yaml").read_bytes(), "prices.yaml"))
    price = price_document(priced)
    return plan, document, price, propose(plan, document, priced, price, read_wording(WORDS, "words.yaml"))


def test_sections_and_payments_add_up_exactly(made: tuple[Plan, str, str, Proposal]) -> None:
    *_, found = made
    assert sum((one.amount for one in found.sections), Decimal(0)) == found.price > 0
    assert sum((one.amount for one in found.payments), Decimal(0)) == found.total
    assert found.rooms[0].untouched == ("hall bath/wall/C-D",)
    assert {"boards", "membrane", "tile", "grout"} <= set(found.included)
    assert {"strip_out", "plumbing", "old_layers"} <= set(found.excluded)
    assert "floor_unjudged" not in found.assumed


@given(
    cents=st.integers(0, 10**9),
    weights=st.lists(st.decimals(0, 10**6, places=4), min_size=1, max_size=6),
)
def test_what_is_shared_adds_up(cents: int, weights: list[Decimal]) -> None:
    amount = Decimal(cents) / 100
    parts = shared(amount, weights)
    assert sum(parts, Decimal(0)) == amount
    whole = sum(weights, Decimal(0))
    for part, weight in zip(parts, weights, strict=True):
        assert not whole or abs(part - amount * weight / whole) <= Decimal("0.01")


def _changed(value: Any) -> Any:
    if isinstance(value, bool):
        return not value
    if isinstance(value, int | float):
        return value + 1
    if isinstance(value, str):
        return f"{Decimal(value) + Decimal('0.01')}" if value.replace(".", "").isdigit() else value + "x"
    return [*value, "x"] if isinstance(value, list) else value


def _leaves(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else None
    if items is None:
        return [path]
    return [path, *(leaf for key, one in items for leaf in _leaves(one, (*path, key)))]


def test_every_changed_value_is_noticed(made: tuple[Plan, str, str, Proposal]) -> None:
    _, document, price, found = made
    text = found.model_dump_json()
    assert verify_proposal(document, price, text) == ()
    unseen = []
    for path in _leaves(json.loads(text)):
        said = json.loads(text)
        place = said
        for key in path[:-1]:
            place = place[key]
        # The firm's own words are nobody's to prove, but for what is counted by them.
        own = path[:1] == ("words",) and path[1:2] not in (("payments",), ("valid_days",))
        if not path or own or isinstance(place[path[-1]], dict) or place[path[-1]] is None:
            continue
        place[path[-1]] = _changed(place[path[-1]])
        if not verify_proposal(document, price, json.dumps(said)):
            unseen.append(path)
    assert unseen == []


@pytest.mark.parametrize("tongue", ["en", "es"])
def test_pages_say_it(made: tuple[Plan, str, str, Proposal], tongue: str) -> None:
    plan, _, _, found = made
    page = proposal_page(plan, found, speaker_for(plan, tongue=tongue))
    assert page["invented"]
    assert page["prices"][-1][1] == "USD 5,377.16"
    assert f"{found.total:,.2f}" in page["opening"] and "{" not in page["opening"]
    assert all(proposal_paper(size, page)[:5] == b"%PDF-" for size in PAGE_SIZES)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("opening: Dear {clinet}\n" + BUSINESS, r"w.yaml:1:10: opening: \{clinet\} is no field; job, client"),
        (BUSINESS + "closing: Dear {client}\n", r"w.yaml:2:15: client: \{client\} has no value"),
        ("business: {name: Made up, phone: none}\n", r"w.yaml:1:11: business.address: 'address' is missing"),
        (BUSINESS + "openning: x\n", r"'openning' is not known here; is `opening` meant"),
        (BUSINESS + "payments: [{at: signing, percent: 50}]\n", "payments come to 50 %"),
        (BUSINESS + "opening: a { brace\n", "brace that stands alone"),
    ],
)
def test_words_that_cannot_be_used_are_refused_with_their_line(text: str, said: str) -> None:
    with pytest.raises(JobError, match=said):
        read_wording(text.encode(), "w.yaml", frozenset({"client"}))


def test_no_total_is_promised_without_all_prices(made: tuple[Plan, str, str, Proposal]) -> None:
    plan, document, _, found = made
    bare = offer(plan, document, read_book(b"book: {name: Empty, currency: USD}\n", "b.yaml"))
    words: Wording = found.words
    with pytest.raises(InputValueError, match=r"no total can be promised: .*grout"):
        propose(plan, document, bare, "", words)
