"""What tests of layouts begin with: boards on the rack, and a layout of some parts on them."""

import time

from sqlalchemy import select

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.cutting.budget import Budget
from casewright.cutting.plans.plan import plan_cuts
from casewright.records.sessions import writing
from casewright.records.stock import PieceKind, StockPiece
from casewright.shop.cut_files import stock_data_of
from casewright.shop.layouts import ask_layout, end_layout
from casewright.shop.stock import PieceFacts, StockSort, label, make_piece
from casewright.solving.worker import answer_of

CHERRY = StockSort(material="cherry", size="4/4", cut="flat", grade="FAS")
PART = {"code": "P1", "wood": "cherry", "class": "4/4", "length": "40", "width": "7-1/2", "count": 1}
KNOT = {"face": "both", "from_left": 80.0, "from_edge": 1.0, "length": 2.0, "width": 2.0}
FACTS = PieceFacts(
    width=8.0, length=96.0, moisture=7.5, log_mark="7", place="rack 2", sap_edge="lower", defects=(KNOT,)
)


def a_board(shop, facts=FACTS, cost=3200):
    """A board of cherry on the rack, with all that one notes of a board."""
    with writing(shop.engine, shop.shop_id) as db:
        return make_piece(
            db, PieceKind.BOARD, CHERRY, facts, "", "Ben Tull", shop.clock.now, cost_cents=cost
        ).id


def laid_out(shop, job_id, *pieces, parts=(PART,), spare=(), **stock):
    """The address of a layout of some parts on pieces of the rack, spare ones too, and on what is typed."""
    with writing(shop.engine, shop.shop_id) as db:
        of_these = select(StockPiece).where(StockPiece.id.in_((*pieces, *spare)))
        held = db.scalars(of_these.order_by(StockPiece.number)).all()
        asked = {"cut_file": 1, "parts": list(parts), **stock_data_of(held)}
        marks = {label(each) for each in held if each.id in spare}
        for kind in ("boards", "sheets"):
            asked[kind] = [{**each, "spare": each["code"] in marks} for each in asked[kind]]
        for kind, more in stock.items():
            asked[kind] = [*asked.get(kind, ()), *more]
        layout = ask_layout(db, job_id, asked, seconds=1, seed=0, who="Ben Tull", now=shop.clock.now)
        file = cut_file_of(asked)
        answer = answer_of(file, plan_cuts(file, Budget(now=time.monotonic, steps=5)))
        end_layout(db, layout.id, shop.clock.now, answer=answer)
        return f"/cutting/{layout.id}"
