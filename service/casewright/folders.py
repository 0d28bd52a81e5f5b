"""Where templates, static files and migrations are: inside an installed package, or beside `service/`.

No other module knows. The wheel carries the three inside the package; a checkout keeps them at its top.
"""

from functools import cache
from pathlib import Path

PACKAGE = Path(__file__).resolve().parent


def templates() -> Path:
    """The folder of the templates of pages and papers."""
    return _folder("templates")


def static() -> Path:
    """The folder of what is served or embedded as it is: style sheets, scripts, fonts."""
    return _folder("static")


def migrations() -> Path:
    """The folder of the steps that bring an older database up to date."""
    return _folder("migrations")


def called(command: str) -> str:
    """A command as it is typed here: by `./run` in a checkout, which has no `casewright` on the path.

    Args:
        command: what follows the program's name, such as `backup FILE`
    """
    return f"{'./run' if (PACKAGE.parents[1] / 'run').is_file() else 'casewright'} {command}"


@cache
def _folder(name: str) -> Path:
    """The first of the two places in which the folder is."""
    places = (PACKAGE / name, PACKAGE.parents[1] / name)
    for place in places:
        if place.is_dir():
            return place
    raise FileNotFoundError(
        f"The folder {name} is neither in {places[0].parent} nor in {places[1].parent}: install it again."
    )
