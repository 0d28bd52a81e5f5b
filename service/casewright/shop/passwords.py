"""Passwords: what may be one, and how it is kept."""

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerificationError

LEAST, MOST = 12, 128
HASHER = PasswordHasher(time_cost=2, memory_cost=19_456, parallelism=1)
"""OWASP's second choice of Argon2id settings: 19 MiB, two passes."""
RUNS = "abcdefghijklmnopqrstuvwxyz 01234567890 qwertyuiop asdfghjkl zxcvbnm qwertzuiop"
WORDS = ("password", "passwort", "letmein", "welcome", "iloveyou", "casewright", "changeme", "administrator")


def password_fault(password: str, *own_words: str) -> str:
    """Why a password cannot be one; empty when it can.

    Args:
        password: as typed
        own_words: the person's name, e-mail and shop, which a stranger would try first
    """
    if len(password) < LEAST:
        return f"It has {len(password)} characters; take {LEAST} or more. Three or four words do well."
    if len(password) > MOST:
        return f"It has {len(password)} characters; {MOST} are the most."
    plain = password.casefold()
    if len(set(plain)) < 5 or _is_run(plain):
        return "It repeats or runs along the keyboard; take three or four words that do not belong together."
    known = [word.casefold() for word in (*WORDS, *own_words) if len(word) >= 4]
    left = plain
    for word in sorted(known, key=len, reverse=True):
        left = left.replace(word, "")
    if len(left.strip("0123456789 !.-_@")) < 4:
        return "It is a word that a stranger would try first; take three or four words of your own."
    return ""


def _is_run(text: str) -> bool:
    letters = text.replace(" ", "")
    return any(letters in run + run for run in (*RUNS.split(), RUNS.replace(" ", "")))


def hash_password(password: str) -> str:
    """The hash that is kept instead of the password."""
    return HASHER.hash(password)


_NOBODY = HASHER.hash("nobody has this password")


def matches(password: str, held: str | None) -> bool:
    """Whether a password is the one; takes as long for nobody's hash as for somebody's."""
    try:
        return HASHER.verify(held or _NOBODY, password) and held is not None
    except (VerificationError, InvalidHashError):
        return False
