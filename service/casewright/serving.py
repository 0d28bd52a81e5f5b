"""Starting the service: database brought up to date, a few lines for whoever started it, then pages."""

import socket
import sys
import webbrowser
from contextlib import closing
from threading import Thread

import uvicorn

from casewright.app import create_app, guarded
from casewright.collecting import seldom_collect
from casewright.logs import set_up_logs
from casewright.records.engine import open_engine
from casewright.records.sessions import across_shops
from casewright.settings import BadSetting, Settings
from casewright.shop.entering import new_set_up_code
from casewright.upkeep.key import link_secret
from casewright.upkeep.place import Place, answering
from casewright.upkeep.upgrade import bring_forward
from casewright.web.frame.connections import Connection

DRAIN = 10
"""Seconds that a stop waits for requests that are under way."""
WAITING = 2048
"""Connections that wait to be taken up; more are refused (uvicorn's own figure)."""


def serve(settings: Settings, *, open_browser: bool = False) -> int:
    """Runs the service until it is told to stop.

    Args:
        settings: where it runs
        open_browser: whether to open the first page

    Returns:
        The exit status.

    Raises:
        BadSetting: the folder, the key of the links, the database or the port cannot be used; with what to do
        Refused: the database is damaged
        NewerDatabase: a newer program used it
    """
    _make_folder(settings)
    secret = link_secret(settings)
    engine = open_engine(settings.database_url)
    with answering(engine):
        kept = bring_forward(Place(engine=engine, data=settings.data, keeps_secret=not settings.secret))
        with across_shops(engine, write=True) as db:
            code = new_set_up_code(db)
    if kept:
        sys.stdout.write(f"The database was brought to this version's form. As it was, it is in  {kept}\n")
    with closing(_listen(settings)) as listener:
        address = address_of(settings, listener.getsockname()[1])
        _greet(settings, address, code)
        if open_browser:
            first = f"{address}/set-up?code={code}" if code else address
            # Beside the rest, for some browsers return only when they are closed; it waits for its answer.
            Thread(target=webbrowser.open, args=(first,), daemon=True).start()
        set_up_logs(settings.log)
        app = create_app(engine, secret=secret, address=settings.address, data=settings.data)
        server = uvicorn.Server(
            uvicorn.Config(
                guarded(app),
                http=Connection,
                access_log=False,
                log_config=None,
                server_header=False,
                date_header=True,
                proxy_headers=bool(settings.proxies),
                forwarded_allow_ips=settings.proxies or "",
                timeout_graceful_shutdown=DRAIN,
                timeout_keep_alive=30,
            )
        )
        seldom_collect()
        server.run(sockets=[listener])
    engine.dispose()
    return 0


def address_of(settings: Settings, port: int) -> str:
    """The address that people on this computer write into a browser.

    Args:
        settings: where it runs
        port: the port that it listens on
    """
    if settings.address:
        return settings.address
    host = "localhost" if settings.host in {"127.0.0.1", "0.0.0.0", "::"} else settings.host  # noqa: S104
    return f"http://[{host}]:{port}" if ":" in host else f"http://{host}:{port}"


def _make_folder(settings: Settings) -> None:
    try:
        settings.data.mkdir(parents=True, exist_ok=True, mode=0o700)
    except OSError as error:
        raise BadSetting(
            f"The data folder {settings.data} cannot be made ({error.strerror}); name another with "
            "--data or CASEWRIGHT_DATA."
        ) from None


def _listen(settings: Settings) -> socket.socket:
    family = socket.AF_INET6 if ":" in settings.host else socket.AF_INET
    # Named as TCP, so that the event loop sends small answers at once instead of after 40 ms.
    listener = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((settings.host, settings.port))
        listener.listen(WAITING)  # from now on who connects is not refused, but waits
    except OSError as error:
        listener.close()
        raise BadSetting(
            f"Port {settings.port} on {settings.host} cannot be used ({error.strerror}); take another, such "
            f"as --port {settings.port + 1}."
        ) from None
    return listener


def _greet(settings: Settings, address: str, code: str | None) -> None:
    lines = [f"Casewright is at  {address}", f"It keeps its data in  {settings.data}"]
    if not settings.database_url.startswith("sqlite"):
        lines.append("and in the PostgreSQL database that CASEWRIGHT_DATABASE_URL names.")
    if code:
        lines += [f"Next: open  {address}/set-up  and type the code  {code}"]
    else:
        lines += ["Next: open it and sign in. Ctrl+C stops it."]
    sys.stdout.write("\n".join(lines) + "\n")
    sys.stdout.flush()
