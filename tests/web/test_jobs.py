"""Jobs in a browser: made, changed by one field, gone back to, fetched and sent."""

import re
from html import unescape

from browsers import Browser
from firstcourse.app.new_jobs import demo_text
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


def test_changes_of_different_fields_meanwhile_merge(owner: Browser, house: House) -> None:
    job = made(owner)
    for field, value in (("rooms[1].height", "7' 9\""), ("rooms[1].taped_to", "finish")):
        sent = {"field": field, "value": value, "base": "1"}
        assert owner.post_form(f"/jobs/{job}/field", f"/jobs/{job}/document", **sent).status_code == 200
    newest = house.jobs.revision(job)
    assert newest is not None and newest.number == 3
    assert "height: 7' 9\"" in newest.text and "taped_to: finish         # studs" in newest.text


def test_changes_of_the_same_field_meanwhile_are_asked_and_saved_as_chosen(owner: Browser, house: House) -> None:
    job = made(owner)
    for height in ("7' 9\"", "7' 8\""):
        sent = {"field": "rooms[1].height", "value": height, "base": "1"}
        answer = owner.post_form(f"/jobs/{job}/field", f"/jobs/{job}/document", **sent)
    assert answer.status_code == 409 and "7&#39; 9&#34;" in answer.text and "7&#39; 8&#34;" in answer.text
    newest = house.jobs.revision(job)
    assert newest is not None and newest.number == 2
    form = dict(re.findall(r'<input type="hidden" name="(.*?)" value="(.*?)">', answer.text))
    text = re.search(r"<textarea[^>]*>\n(.*?)</textarea>", answer.text, re.DOTALL)
    assert text is not None
    del form["token"]
    form |= {"text": unescape(text[1]), "take rooms[1].height": "mine"}
    owner.post_form(f"/jobs/{job}/decide", f"/jobs/{job}/document", **form)
    newest = house.jobs.revision(job)
    assert newest is not None and newest.number == 3 and "height: 7' 8\"" in newest.text


def test_a_document_is_sent_and_comes_back_byte_for_byte(owner: Browser, house: House) -> None:
    text = demo_text().replace("\n", "\n# mine\n", 1)
    answer = owner.post_form("/jobs/upload", files={"file": ("mine.yaml", text.encode())})
    assert owner.get(f"{answer.url}/job.yaml").text == text


def test_a_job_is_copied_and_put_away(owner: Browser, house: House) -> None:
    job = made(owner)
    copy = str(owner.post_form(f"/jobs/{job}/copy").url).rpartition("/")[2]
    assert copy != job and owner.get(f"/jobs/{copy}/job.yaml").text == owner.get(f"/jobs/{job}/job.yaml").text
    owner.post_form(f"/jobs/{job}/archive")
    assert job not in owner.get("/jobs").text and job in owner.get("/jobs?archived=yes").text


def test_a_wrong_document_is_told_and_what_was_typed_stays(owner: Browser) -> None:
    job = made(owner)
    answer = owner.post_form(f"/jobs/{job}/document", f"/jobs/{job}/document", text="name: <b>x</b>\n", base="1")
    assert answer.status_code == 422 and "rooms" in answer.text
    assert "name: &lt;b&gt;x&lt;/b&gt;" in answer.text and "<b>x" not in answer.text
