"""Sessions that stay inside one shop.

A session knows its shop; every query over an owned table gets that shop as a condition, and one without a
shop is refused. `across_shops` is for the few who must look over the fence: sign-in, backup, the doctor.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any
from weakref import WeakKeyDictionary

from sqlalchemy import Engine, bindparam, event, text
from sqlalchemy.exc import OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeout
from sqlalchemy.orm import ORMExecuteState, Session, UOWTransaction, with_loader_criteria

from casewright.records.base import Lasting, Owned

ACROSS = "across shops"
REMOVAL = "removal"
"""Marks a session that may delete what otherwise lasts: the removal of the demo."""
FENCE = with_loader_criteria(
    Owned,
    lambda table: table.shop_id == bindparam("fenced_shop"),
    include_aliases=True,
    propagate_to_loaders=False,
)
"""The condition on every owned table of a query. The shop is a parameter of it, so that it is built once."""
_fenced: WeakKeyDictionary[Any, Any] = WeakKeyDictionary()
"""Statements with the fence in them: one that a module holds is fenced once, and its key for the cache of
compiled statements is made once."""
SHORT_PATIENCE = 100
"""How long a note in passing waits for other writers [ms]."""


class NoShop(Exception):
    """A query over a shop's rows in a session that has no shop: a fault of the program."""


class Fenced(Session):
    """A session that stays inside its shop."""

    @property
    def shop_id(self) -> str:
        """The shop that this session works for."""
        held = self.info.get("shop")
        if not isinstance(held, str):
            raise NoShop("this session has no shop")
        return held


@event.listens_for(Fenced, "do_orm_execute")
def _stay_in_shop(state: ORMExecuteState) -> None:
    if state.is_column_load or state.is_relationship_load or state.session.info.get(ACROSS):
        return
    shop = state.session.info.get("shop")
    if (fenced := _fenced.get(state.statement)) is None:
        owned = [mapper for mapper in state.all_mappers if issubclass(mapper.class_, Owned)]
        if not owned:
            _refuse_bare_tables(state)
            return
        if not shop:
            raise NoShop(f"a query over {owned[0].class_.__name__} without a shop")
        if state.is_insert:
            _inserts_stay(state, shop)
            return
        fenced = _fenced[state.statement] = state.statement.options(FENCE)
    elif not shop:
        raise NoShop("a query over rows of a shop without a shop")
    state.statement = fenced
    state.parameters = _with_shop(state.parameters, shop)


def _with_shop(given: Any, shop: str) -> Any:
    """The parameters of a query, and the shop that its fence asks for."""
    if isinstance(given, list):
        return [{**one, "fenced_shop": shop} for one in given]
    return {**(given or {}), "fenced_shop": shop}


def _refuse_bare_tables(state: ORMExecuteState) -> None:
    """Refuses statements over tables instead of classes: the condition cannot be put into them."""
    asked: Any = state.statement
    tables: list[Any] = [*getattr(asked, "get_final_froms", list)(), getattr(asked, "table", None)]
    for table in tables:
        if "shop_id" in getattr(table, "c", {}):
            raise NoShop(f"a query over the bare table {table}; ask its class")


def _inserts_stay(state: ORMExecuteState, shop: str) -> None:
    given: Any = state.parameters
    rows = given if isinstance(given, list) else [given or {}]
    if any(row.get("shop_id") != shop for row in rows):
        raise NoShop("rows of another shop, or of none, in an insert")


@event.listens_for(Fenced, "before_flush")
def _rows_stay_in_shop(session: Session, flush: UOWTransaction, instances: Any) -> None:
    shop = session.info.get("shop")
    for row in session.new:
        if isinstance(row, Owned):
            if row.shop_id is None and shop:
                row.shop_id = shop
            if not row.shop_id or (shop and row.shop_id != shop):
                raise NoShop(f"a {type(row).__name__} of another shop, or of none")
    for row in (*session.dirty, *session.deleted):
        if isinstance(row, Lasting) and session.is_modified(row):
            raise NoShop(f"a {type(row).__name__} is written once and not changed")
    for row in session.deleted:
        if isinstance(row, Lasting) and not session.info.get(REMOVAL):
            raise NoShop(f"a {type(row).__name__} is kept for good")


@contextmanager
def reading(engine: Engine, shop_id: str | None) -> Iterator[Fenced]:
    """A session that only reads, and sees one moment."""
    held = engine.execution_options(read_only=True, postgresql_readonly=True)
    with Fenced(held, info={"shop": shop_id}, autoflush=False) as session:
        yield session


@contextmanager
def writing(engine: Engine, shop_id: str | None, **info: Any) -> Iterator[Fenced]:
    """A session that writes: all of it when the block ends, nothing when it raises.

    One writer of a shop goes after another, as on SQLite, so that each sees what the one before it saved: of
    two who save the same form the second is told, and gets both texts.
    """
    with Fenced(engine, info={"shop": shop_id, **info}, expire_on_commit=False) as session, session.begin():
        if shop_id and engine.dialect.name == "postgresql":
            if patience := engine.get_execution_options().get("patience"):
                session.execute(text(f"SET LOCAL lock_timeout = {int(patience)}"))
            session.execute(
                text("SELECT pg_advisory_xact_lock(hashtextextended(:shop, 0))"), {"shop": shop_id}
            )
        yield session


def in_passing(engine: Engine, shop_id: str, note: Callable[[Fenced], object]) -> None:
    """Writes a note that nobody waits for; while others write, or nothing can be written, it is left out.

    Args:
        engine: the database
        shop_id: the shop
        note: writes it
    """
    try:
        with writing(engine.execution_options(patience=SHORT_PATIENCE), shop_id) as db:
            note(db)
    except (OperationalError, PoolTimeout):
        pass  # whoever only looks is refused no page for it


@contextmanager
def across_shops(engine: Engine, *, write: bool = False) -> Iterator[Fenced]:
    """A session over all shops, for those who do not know the shop yet or look after all of them."""
    if write:
        with writing(engine, None, **{ACROSS: True}) as session:
            yield session
        return
    with reading(engine, None) as session:
        session.info[ACROSS] = True
        yield session


@contextmanager
def inside(session: Fenced, shop_id: str) -> Iterator[Fenced]:
    """Holds a session over all shops inside one of them for a while: the shop that it has just made."""
    before = dict(session.info)
    session.info["shop"] = shop_id
    session.info.pop(ACROSS, None)
    try:
        yield session
        session.flush()
    finally:
        session.info.clear()
        session.info.update(before)
