"""Ids that cannot be guessed, secrets, and the digests that are kept of these."""

import hashlib
import secrets

_SIGNS = "0123456789abcdefghjkmnpqrstvwxyz"
"""Letters and digits without those that are easily taken for another (i, l, o, u)."""
_ALIKE = str.maketrans("ilo", "110")
_ID_SIGNS, _CODE_SIGNS, _SECRET_BYTES = 20, 28, 32
_GROUP = 7


def new_id() -> str:
    """An id of 100 random bits, fit for addresses."""
    return "".join(secrets.choice(_SIGNS) for _ in range(_ID_SIGNS))


def new_secret() -> str:
    """A secret of 256 random bits for a cookie."""
    return secrets.token_urlsafe(_SECRET_BYTES)


def new_code() -> str:
    """A secret of 140 random bits that can be typed, in groups: `k3f90ab-…`."""
    signs = "".join(secrets.choice(_SIGNS) for _ in range(_CODE_SIGNS))
    return "-".join(signs[at : at + _GROUP] for at in range(0, _CODE_SIGNS, _GROUP))


def digest(secret: str) -> str:
    """SHA-256 of a secret, in hex: what the database keeps of it."""
    return hashlib.sha256(secret.encode()).hexdigest()


def code_digest(typed: str) -> str:
    """The digest of a code as it was typed: capitals, blanks, dashes and signs that look alike don't matter."""
    return digest("".join(sign for sign in typed.lower().translate(_ALIKE) if sign.isalnum()))
