"""Where the work is done, for whom, by whom and when: what stands on the cover of the papers."""

import datetime
from typing import Annotated

from pydantic import Field

from firstcourse.job.fields import JobModel, Printed

Line = Annotated[Printed, Field(max_length=120)]


class Site(JobModel):
    """What stands on the cover; what is not given is printed as a blank to fill by hand."""

    client: Line = Field(default="", description="For whom the work is done.")
    address: Line = Field(default="", description="Where the rooms are, in one line.")
    phone: Line = Field(default="", description="Whom to call on site: number, and name if it helps.")
    setter: Line = Field(default="", description="Who does the work.")
    starts: datetime.date | None = Field(default=None, description="First day on site.")
    ends: datetime.date | None = Field(default=None, description="Day by which all is to be done.")
