"""Every page, room by room."""

from casewright.web.bench.board import router as board
from casewright.web.bench.page import router as bench
from casewright.web.bench.taps import router as taps
from casewright.web.bench.time import router as time_
from casewright.web.cutting.asking import router as cutting_asked
from casewright.web.cutting.page import router as cutting
from casewright.web.cutting.put_away import router as cutting_put_away
from casewright.web.cutting.short import router as cutting_short
from casewright.web.door.account import router as account
from casewright.web.door.demo import router as demo
from casewright.web.door.entry import router as doors
from casewright.web.door.people import router as people
from casewright.web.frame.help import router as help_
from casewright.web.frame.plain import router as plain
from casewright.web.jobs.customers import router as customers
from casewright.web.jobs.forms import router as job_forms
from casewright.web.jobs.listing import router as jobs
from casewright.web.jobs.money import router as job_money
from casewright.web.jobs.own_page import router as job_own
from casewright.web.jobs.page import router as job_page
from casewright.web.jobs.search import router as search
from casewright.web.quotes.acts import router as quotes
from casewright.web.quotes.customer_link import router as customer_link
from casewright.web.quotes.options import router as quote_options
from casewright.web.quotes.papers import router as papers
from casewright.web.settings.hours import router as shop_hours
from casewright.web.settings.log import router as shop_log
from casewright.web.settings.prices import router as shop_prices
from casewright.web.settings.rack import router as shop_rack
from casewright.web.settings.rate import router as shop_rate
from casewright.web.settings.revisions import router as shop_revisions
from casewright.web.settings.shop import router as shop_itself
from casewright.web.settings.slides import router as shop_slides
from casewright.web.settings.woods import router as shop_woods
from casewright.web.stock.chance import router as stock_chance
from casewright.web.stock.deliveries import router as stock_deliveries
from casewright.web.stock.new_order import router as stock_new_order
from casewright.web.stock.orders import router as stock_orders
from casewright.web.stock.piece import router as stock_piece
from casewright.web.stock.rack import router as stock_rack
from casewright.web.stock.supplier_prices import router as stock_supplier_prices
from casewright.web.stock.suppliers import router as stock_suppliers
from casewright.web.stock.tally import router as stock_tally
from casewright.web.stock.yields import router as stock_yields
from casewright.web.units.books import router as unit_books
from casewright.web.units.case_joints import router as unit_case_joints
from casewright.web.units.change_orders import router as unit_change_orders
from casewright.web.units.change_review import router as unit_change_review
from casewright.web.units.compare import router as unit_compare
from casewright.web.units.editor import router as unit_editor
from casewright.web.units.joints import router as unit_joints
from casewright.web.units.layouts import router as unit_layouts
from casewright.web.units.options import router as unit_options
from casewright.web.units.own_starts import router as unit_own_starts
from casewright.web.units.parts import router as unit_parts
from casewright.web.units.price import router as unit_price
from casewright.web.units.rework import router as unit_rework
from casewright.web.units.season import router as unit_season
from casewright.web.units.stability import router as unit_stability
from casewright.web.units.start import router as unit_start
from casewright.web.units.takes import router as unit_takes
from casewright.web.units.working import router as unit_working

ROUTERS = (
    jobs,
    cutting_asked,
    cutting,
    cutting_put_away,
    cutting_short,
    job_forms,
    job_page,
    job_money,
    job_own,
    board,
    bench,
    taps,
    time_,
    unit_start,
    unit_editor,
    unit_parts,
    unit_joints,
    unit_case_joints,
    unit_layouts,
    unit_season,
    unit_stability,
    unit_takes,
    unit_price,
    unit_rework,
    unit_change_orders,
    unit_change_review,
    unit_working,
    unit_compare,
    unit_books,
    unit_options,
    unit_own_starts,
    quotes,
    quote_options,
    papers,
    customer_link,
    stock_rack,
    stock_piece,
    stock_tally,
    stock_deliveries,
    stock_chance,
    stock_new_order,
    stock_orders,
    stock_supplier_prices,
    stock_suppliers,
    stock_yields,
    search,
    customers,
    plain,
    doors,
    account,
    people,
    help_,
    shop_itself,
    shop_rate,
    shop_prices,
    shop_hours,
    shop_log,
    shop_woods,
    shop_rack,
    shop_slides,
    shop_revisions,
    demo,
)
"""Each is asked in turn whether a path is its own: what a shop opens all day comes first."""
