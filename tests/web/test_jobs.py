"""Jobs in a browser: made, changed by one field, gone back to, fetched and sent."""

import re

from browsers import Browser
from firstcourse.web.house import House


def made(owner: Browser, name: str = "Hall bath") -> str:
    answer = owner.post_form("/jobs/new", "/jobs/new", name=name, practice="us", tape="inch", job_tongue="en")
    found = re.search(r"/jobs/(\w{20})$", str(answer.url))
    assert answer.status_code == 200 and found
    return found[1]


def test_a_job_is_made_listed_and_fetched(owner: Browser) -> None:
    job = made(owner)
    assert "Hall bath" in owner.get("/jobs").text
    fetched = owner.get(f"/jobs/{job}/job.yaml").text
    assert "name: Hall bath" in fetched and "# Stand inside" in fetched


def test_one_field_is_saved_as_a_revision_and_gone_back_from(owner: Browser, house: House) -> None:
    job = made(owner)
    owner.post_form(
        f"/jobs/{job}/field", f"/jobs/{job}/document", field="rooms[1].height", value="7' 9\"", base="1"
    )
    newest = house.jobs.revision(job)
    assert newest is not None and newest.number == 2 and "height: 7' 9\"" in newest.text
    difference = owner.get(f"/jobs/{job}/difference?from=1&to=2").text
    assert "+    height: 7&#39; 9&#34;" in difference
    owner.post_form(f"/jobs/{job}/undo", f"/jobs/{job}/revisions", to="1", base="2")
    newest, first = house.jobs.revision(job), house.jobs.revision(job, 1)
    assert newest is not None and first is not None
    assert newest.number == 3 and newest.text == first.text and newest.by == "Ada"


def test_a_wrong_value_gets_the_message_of_the_file_and_is_not_saved(owner: Browser, house: House) -> None:
    job = made(owner)
    answer = owner.post_form(
        f"/jobs/{job}/field", f"/jobs/{job}/document", field="rooms[1].height", value="1,200", base="1"
    )
    assert answer.status_code == 422 and "rooms[1].height" in answer.text and "1,200" in answer.text
    newest = house.jobs.revision(job)
    assert newest is not None and newest.number == 1


def test_what_another_saved_meanwhile_is_told(owner: Browser, house: House) -> None:
    job = made(owner)
    for height in ("7' 9\"", "7' 8\""):
        answer = owner.post_form(
            f"/jobs/{job}/field", f"/jobs/{job}/document", field="rooms[1].height", value=height, base="1"
        )
    assert answer.status_code == 409
    newest = house.jobs.revision(job)
    assert newest is not None and newest.number == 2 and "7' 9\"" in newest.text
