"""Passwords: what is accepted as one, and the hash that is kept of it (argon2id)."""

import threading

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

from firstcourse.errors import InputValueError

SHORTEST, LONGEST = 12, 128
_WEAKEST = 3
"""Of zxcvbn's marks 0 to 4: one that withstands guessing offline for a while; it knows what is commonly chosen."""
_AT_A_TIME = threading.Semaphore(2)
"""Each hash takes 64 MiB: many who sign in at a time must not take all memory."""
_HASHER = PasswordHasher()
"""RFC 9106's second recommended option: argon2id, 3 passes, 64 MiB, 4 lanes."""
_NOBODY = ""


def password_hash(password: str, *, name: str) -> str:
    """The hash of a new password.

    Args:
        password: As it was typed.
        name: Whose it is; a password made of it is refused.

    Raises:
        InputValueError: It is too short, too long or easily guessed.
    """
    if not SHORTEST <= len(password) <= LONGEST:
        said = f"a password has {SHORTEST} to {LONGEST} characters; this one has {len(password)}"
        raise InputValueError(said, field="password")
    from zxcvbn import zxcvbn

    if zxcvbn(password, user_inputs=[*name.split(), "firstcourse"])["score"] < _WEAKEST:
        raise InputValueError("this password is easily guessed; take several words that go together nowhere")
    with _AT_A_TIME:
        return _HASHER.hash(password)


def is_password(kept: str, typed: str) -> bool:
    """Whether what was typed is the password that a hash was kept of; takes as long where none was kept.

    Args:
        kept: The hash; empty where there is none.
        typed: What was typed.
    """
    global _NOBODY
    with _AT_A_TIME:
        if not kept:
            _NOBODY = _NOBODY or _HASHER.hash("nobody's")
        try:
            return _HASHER.verify(kept or _NOBODY, typed[: LONGEST + 1]) and bool(kept)
        except (VerificationError, InvalidHashError):
            return False
