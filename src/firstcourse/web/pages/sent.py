"""A job document that a form sends, typed or as a file."""

from firstcourse.errors import InputValueError
from firstcourse.files import utf8_text
from firstcourse.web.asking import Ask

_ENDINGS = (".yaml", ".yml", ".json")


def sent_text(ask: Ask) -> str:
    """The document that a form sends.

    Raises:
        InputValueError: It sends none, or one that is not UTF-8.
    """
    name, data = ask.files.get("file", ("", b""))
    if not data:
        raise InputValueError("no file was sent; choose a job document", field="file")
    if not name.lower().endswith(_ENDINGS):
        raise InputValueError(f"{name}: a job document ends in {', '.join(_ENDINGS)}", field="file")
    try:
        return utf8_text(data)
    except InputValueError as error:
        raise InputValueError(f"{name}: {error}") from None
