"""When the shop's rules say no."""

from casewright.measure.saying import Words


class Refused(Exception):
    """Something that cannot be done; the message is a whole sentence for the person who asked.

    Attributes:
        status: the HTTP status that says it best
    """

    def __init__(self, message: Words, status: int = 409) -> None:
        super().__init__(message)
        self.status = status


class NotFound(Refused):
    """There is no such thing in this shop."""

    def __init__(self, thing: str = "page") -> None:
        super().__init__(f"There is no such {thing} in this shop.", 404)


SAVED_MEANWHILE = "Somebody else saved this while you were writing; nothing of yours is lost."


class Stale(Refused):
    """Somebody else saved in between.

    Attributes:
        theirs: field by field, what is there now
    """

    def __init__(self, theirs: dict[str, str], message: Words = SAVED_MEANWHILE) -> None:
        super().__init__(message)
        self.theirs = theirs


class TooMany(Refused):
    """Too many tries; wait.

    Attributes:
        seconds: how long
    """

    def __init__(self, seconds: int) -> None:
        minutes = -(-seconds // 60)
        wait = "a minute" if minutes == 1 else f"{minutes} minutes"
        super().__init__(f"Too many tries. Wait {wait}, then try again.", 429)
        self.seconds = seconds
