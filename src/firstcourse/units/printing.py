"""Text as it may safely reach a terminal."""

import unicodedata


def printable(text: str) -> str:
    r"""Show what steers a terminal or turns the direction of writing as its code; lines and tabs stay.

    Example:
        >>> print(printable("hall\x1b[2Jbath"))
        hall\x1b[2Jbath
    """
    return "".join(sign if _is_plain(sign) else sign.encode("unicode_escape").decode() for sign in text)


def _is_plain(sign: str) -> bool:
    return sign.isprintable() or sign in "\n\t" or unicodedata.category(sign) == "Zs"
