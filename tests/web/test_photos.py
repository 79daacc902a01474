"""Photos from site: only what is seen on them is kept, by whoever may work on the job, and within limits."""

import re
from collections.abc import Callable
from io import BytesIO

import pytest
from httpx2 import Response
from PIL import Image
from test_onsite import WALL, keep, planned

from browsers import Browser
from firstcourse.app.photo import MOST_BYTES
from firstcourse.store.accounts import Account, Role
from firstcourse.web.house import House

SURFACE = "bath/wall/A-B"
PLACE = {"surface": SURFACE, "stage": "boards", "across": "250", "up": "750", "note": "blocking at the valve"}


@pytest.fixture
def with_accounts() -> bool:
    return True


@pytest.fixture
def people(house: House) -> dict[str, Account]:
    return {name: house.accounts.create(name, Role.SETTER) for name in ("Ben", "Cleo")}


@pytest.fixture
def job(house: House, people: dict[str, Account]) -> str:
    made = house.jobs.create("one wall", WALL, by=people["Ben"].id)
    keep(house, made, 1, planned())
    return made


@pytest.fixture
def ben(signed_in: Callable[[Account], Browser], people: dict[str, Account]) -> Browser:
    return signed_in(people["Ben"])


def photo(kind: str = "JPEG", size: tuple[int, int] = (300, 200), **kept: object) -> bytes:
    """A picture whose left half is red."""
    made = Image.new("RGB", size, "blue")
    made.paste("red", (0, 0, size[0] // 2, size[1]))
    out = BytesIO()
    made.save(out, kind, **kept)  # type: ignore[arg-type]
    return out.getvalue()


def send(browser: Browser, job: str, data: bytes, **fields: str) -> Response:
    page = f"/jobs/{job}/site/photos?surface={SURFACE}"
    nonce = re.search(r'name="nonce" value="([^"]*)"', browser.get(page).text)
    given = {"nonce": nonce[1] if nonce else "none"} | PLACE | fields
    files = {"photo": ("../x.jpg", data, "image/jpeg")}
    return browser.post_form(f"/jobs/{job}/site/photos", files=files, follow_redirects=False, **given)


def test_a_photo_is_kept_upright_small_and_without_its_data(ben: Browser, job: str, house: House) -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # its left is at the top
    exif[0x010F] = "maker"
    exif.get_ifd(0x8825)[1] = "N"  # a place on the earth
    data = photo(size=(3000, 2000), exif=exif, comment=b"secret", quality=90)
    assert b"maker" in data and b"secret" in data
    assert send(ben, job, data).status_code == 303
    (kept,) = house.photos.of(job)
    assert (kept.surface, kept.stage, kept.across, kept.up, kept.by) == (SURFACE, "boards", 250, 750, "Ben")
    answer = ben.get(f"/jobs/{job}/site/photos/{kept.id}")
    assert answer.headers["content-type"] == "image/jpeg"
    shown = Image.open(BytesIO(answer.content))
    assert shown.size == (1600, 2400) == (kept.width, kept.height)
    assert not shown.getexif() and "comment" not in shown.info and "exif" not in shown.info
    assert b"maker" not in answer.content and b"secret" not in answer.content
    upper, lower = shown.getpixel((800, 100)), shown.getpixel((800, 2300))
    assert isinstance(upper, tuple) and upper[0] > 200 and isinstance(lower, tuple) and lower[2] > 200
    page = ben.get(f"/jobs/{job}/site/photos?surface={SURFACE}").text
    assert "blocking at the valve" in page and re.search(r"<text [^>]*>1</text>", page)


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_other_kinds_become_jpeg(ben: Browser, job: str, house: House, kind: str) -> None:
    assert send(ben, job, photo(kind)).status_code == 303
    (kept,) = house.photos.of(job)
    assert (
        house.photos.content(
            job,
            kept.id,
        )[:3]
        == b"\xff\xd8\xff"
    )  # type: ignore[index]


@pytest.mark.parametrize(
    "data",
    [b"", b"GIF89a", photo("GIF"), photo("BMP"), photo()[:400], photo("PNG", (9000, 5000)), b"<svg/>"],
    ids=["none", "few bytes", "gif", "bmp", "cut off", "too many pixels", "svg"],
)
def test_what_is_no_photo_is_told_and_not_kept(ben: Browser, job: str, house: House, data: bytes) -> None:
    answer = send(ben, job, data)
    assert answer.status_code == 422 and 'role="alert"' in answer.text
    assert house.photos.of(job) == ()


def test_too_many_bytes_are_refused(ben: Browser, job: str, house: House) -> None:
    assert send(ben, job, b"\xff\xd8\xff" + bytes(MOST_BYTES)).status_code == 422
    assert send(ben, job, bytes(13_000_000)).status_code == 413
    assert house.photos.of(job) == ()


@pytest.mark.parametrize("wrong", [{"stage": "party"}, {"across": "1001"}, {"up": "-1"}, {"note": "y" * 201}])
def test_a_wrong_place_is_told(ben: Browser, job: str, house: House, wrong: dict[str, str]) -> None:
    assert send(ben, job, photo(), **wrong).status_code == 422
    assert house.photos.of(job) == ()


def test_a_photo_sent_twice_is_kept_once_and_taken_away(ben: Browser, job: str, house: House) -> None:
    for _ in range(2):
        assert send(ben, job, photo(), nonce="the same form").status_code == 303
    (kept,) = house.photos.of(job)
    ben.post_form(f"/jobs/{job}/site/photos/drop", photo=kept.id)
    assert house.photos.of(job) == ()


def test_a_photo_belongs_to_its_job(
    ben: Browser, job: str, house: House, people: dict[str, Account], signed_in: Callable[[Account], Browser]
) -> None:
    send(ben, job, photo())
    (kept,) = house.photos.of(job)
    cleo, other = signed_in(people["Cleo"]), house.jobs.create("other", WALL, by=people["Cleo"].id)
    assert cleo.get(f"/jobs/{job}/site/photos/{kept.id}").status_code == 404
    assert cleo.get(f"/jobs/{other}/site/photos/{kept.id}").status_code == 404
    cleo.post_form(f"/jobs/{other}/site/photos/drop", photo=kept.id)
    assert cleo.post_form(f"/jobs/{job}/site/photos/drop", photo=kept.id).status_code == 404
    assert len(house.photos.of(job)) == 1
    assert send(ben, job, photo(), surface="bath/wall/C-D").status_code == 400
