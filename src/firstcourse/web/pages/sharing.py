"""Who else sees a job: accounts that may work on it, and clients that may read it by a link."""

from starlette.responses import Response

from firstcourse.store.accounts import Role
from firstcourse.web.asking import Ask
from firstcourse.web.pages.people import show_code


def shown(ask: Ask) -> Response:
    """The accounts, and which of them may work on the job."""
    people = [one for one in ask.house.accounts.all() if one.role is not Role.OWNER and not one.closed]
    return ask.page("share.html", job=ask.job, people=people, shared=ask.house.jobs.shared_with(ask.job.id))


def share(ask: Ask) -> Response:
    """Set which accounts may work on the job."""
    known = {one.id for one in ask.house.accounts.all()}
    ask.house.jobs.share(ask.job.id, [name for name in ask.form if name in known])
    return ask.go(f"/jobs/{ask.job.id}/people")


def links(ask: Ask) -> Response:
    """The links that clients were given."""
    return ask.page("links.html", job=ask.job, links=ask.house.accounts.links(ask.job.id))


def new_link(ask: Ask) -> Response:
    """A link for a client, shown this once."""
    label = " ".join(ask.form.get("label", "").split())
    code = ask.house.accounts.new_link(ask.job.id, label, by=ask.who.id)
    return show_code(ask, ask.job.name, code, f"/jobs/{ask.job.id}/links")


def end_link(ask: Ask) -> Response:
    """End a link."""
    ask.house.accounts.end_link(ask.job.id, ask.form.get("link", ""))
    return ask.go(f"/jobs/{ask.job.id}/links")
