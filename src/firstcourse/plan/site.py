"""Where the work of a plan is done, for whom, by whom and when."""

from firstcourse.plan.base import Frozen


class SiteStamp(Frozen):
    """What the job says of its site, as the cover prints it; empty where the job does not say.

    Attributes:
        client: For whom the work is done.
        phone: Whom to call on site.
        setter: Who does the work.
        starts: First day on site, ISO 8601.
        ends: Day by which all is to be done, ISO 8601.
    """

    client: str = ""
    address: str = ""
    phone: str = ""
    setter: str = ""
    starts: str = ""
    ends: str = ""
