"""Photos that come from outside: read with limits, and made anew without anything but what is seen on them."""

from dataclasses import dataclass
from io import BytesIO

from PIL import Image, ImageOps

from firstcourse.errors import InputValueError

MOST_BYTES = 12_000_000
MOST_PIXELS = 40_000_000
LONGEST_SIDE = 2400
"""Of a photo that is kept [pixels]."""
_FORMATS = ("JPEG", "PNG", "WEBP")
_QUALITY = 85


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A photo that can be kept.

    Attributes:
        content: JPEG, upright, without place, time, camera or any other data.
        width: In pixels.
        height: In pixels.
    """

    content: bytes
    width: int
    height: int


def read_photo(data: bytes) -> Photo:
    """Read a photo and make it anew.

    Args:
        data: JPEG, PNG or WebP; of several pictures the first.

    Raises:
        InputValueError: It is too large, damaged, or no such picture.
    """
    if not data:
        raise InputValueError("no photo was sent; take one or choose a file", field="photo")
    if len(data) > MOST_BYTES:
        raise InputValueError(
            f"{len(data):,} bytes are too many for a photo ({MOST_BYTES:,} at most)", field="photo"
        )
    try:
        with Image.open(BytesIO(data), formats=_FORMATS) as opened:
            if opened.width * opened.height > MOST_PIXELS:
                size = f"{opened.width} × {opened.height}"
                raise InputValueError(
                    f"{size} pixels are too many for a photo ({MOST_PIXELS:,} at most)", field="photo"
                )
            opened.draft("RGB", (LONGEST_SIDE, LONGEST_SIDE))
            opened.load()
            upright = ImageOps.exif_transpose(opened)
    except InputValueError:
        raise
    except Exception:
        # A decoder of pictures from outside may raise anything.
        said = "this is no photo that can be read; send JPEG, PNG or WebP"
        raise InputValueError(said, field="photo") from None
    upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    seen = upright.convert("RGBA")
    # Painted on a new picture: what else the file held, such as the place, stays behind.
    made = Image.new("RGB", seen.size, "white")
    made.paste(seen, mask=seen.getchannel("A"))
    out = BytesIO()
    made.save(out, "JPEG", quality=_QUALITY, optimize=True)
    return Photo(content=out.getvalue(), width=made.width, height=made.height)
