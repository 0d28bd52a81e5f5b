"""The link under which one customer reads one quote: made from a key, kept as a hash, ended at will."""

import hmac
from base64 import urlsafe_b64encode
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256

from sqlalchemy import Engine, update

from casewright.records.papers import Quote, QuoteState
from casewright.records.people import Shop
from casewright.records.quotes import quote_by_link
from casewright.records.sessions import Fenced, in_passing
from casewright.shop.keeping import note_history
from casewright.shop.links import token_hash
from casewright.shop.quotes import LoadedQuote
from casewright.shop.refusals import Refused

DOOR = "quote link"


def link_token(quote: Quote, secret: bytes) -> str:
    """The secret part of a quote's present link: 256 bits that only the key and the quote give."""
    said = f"quote link\n{quote.shop_id}\n{quote.id}\n{quote.link_serial}".encode()
    return urlsafe_b64encode(hmac.new(secret, said, sha256).digest()).decode().rstrip("=")


def link_path(quote: Quote, secret: bytes) -> str:
    """The path of a quote's link; empty where it has none, has ended, or the key has changed."""
    token = link_token(quote, secret)
    if quote.link_ended_at is not None or quote.link_hash != token_hash(token):
        return ""
    return f"/quote/{quote.shop_id}.{token}"


def new_link(db: Fenced, held: LoadedQuote, secret: bytes, *, first: bool = False) -> None:
    """Gives a quote a link; the one before it opens nothing any more.

    Raises:
        Refused: the quote has not been sent
    """
    quote = held.quote
    if quote.state is QuoteState.DRAFT:
        raise Refused("A draft has no link; send it first.")
    if not first:
        quote.link_serial += 1
    db.flush()
    quote.link_hash, quote.link_ended_at = token_hash(link_token(quote, secret)), None


def renew_link(db: Fenced, held: LoadedQuote, secret: bytes, who: str, now: datetime) -> None:
    """Makes a new link, for instance where the old one went astray."""
    new_link(db, held, secret)
    note_history(db, who, now, f"Made a new link for {held.name}; the old one stopped.", job_id=held.job.id)


def end_link(db: Fenced, held: LoadedQuote, who: str, now: datetime) -> None:
    """Ends a quote's link: who opens it is told so, and nothing can be answered by it.

    Raises:
        Refused: there is none
    """
    if held.quote.link_hash is None:
        raise Refused("This quote has no link.")
    if held.quote.link_ended_at is None:
        held.quote.link_ended_at = now
        note_history(db, who, now, f"Ended the link of {held.name}.", job_id=held.job.id)


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """What a link opens."""

    held: LoadedQuote
    shop: Shop

    @property
    def has_ended(self) -> bool:
        """Whether the shop ended the link."""
        return self.held.quote.link_ended_at is not None


def open_link(db: Fenced, secret: str) -> Opened | None:
    """The quote that a link opens; None where it opens nothing."""
    found = quote_by_link(db, token_hash(secret.partition(".")[2]))
    if found is None:
        return None
    quote, shop, job, customer = found
    return Opened(held=LoadedQuote(quote=quote, job=job, customer=customer), shop=shop)


def note_opening(engine: Engine, held: LoadedQuote, now: datetime) -> None:
    """Remembers when a link was first opened: a short write of its own, which changes nothing else."""
    quote_id, job_id, name = held.quote.id, held.quote.job_id, held.name

    def note(db: Fenced) -> None:
        first = db.execute(
            update(Quote)
            .where(Quote.id == quote_id, Quote.opened_at.is_(None))
            .values(opened_at=now)
            .returning(Quote.id)
            .execution_options(synchronize_session=False)
        ).first()
        if first is not None:
            what = f"The link of {name} was opened for the first time."
            note_history(db, "the link", now, what, job_id=job_id)

    in_passing(engine, held.quote.shop_id, note)
