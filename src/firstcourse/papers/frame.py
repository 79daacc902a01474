"""What stands round the pages of a pack: their head and foot, in the reader's tongue."""

from collections.abc import Mapping

from firstcourse.plan import Plan
from firstcourse.words import Speaker

PUT_IN: Mapping[str, str] = {name: f"{{{name}}}" for name in ("page", "pages", "scale", "text", "shows")}
"""What only the page maker knows, or what differs from page to page: it puts these in by their names in braces."""


def page_frame(plan: Plan, speaker: Speaker, pack: str) -> dict[str, str]:
    """Head, foot and the word before cautions.

    Args:
        plan: Whose job, date and digest stand on every page.
        speaker: In whose tongue.
        pack: What the pack is called.
    """
    return speaker.labels(
        "papers-frame",
        job=plan.job.name,
        pack=pack,
        digest=plan.job.digest[:12],
        practice=plan.job.practice.upper(),
        date=plan.job.date,
        **PUT_IN,
    )
