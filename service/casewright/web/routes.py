"""Every page, room by room."""

from casewright.web.account import router as account
from casewright.web.bench import router as bench
from casewright.web.board import router as board
from casewright.web.customer_link import router as customer_link
from casewright.web.customers import router as customers
from casewright.web.demo import router as demo
from casewright.web.doors import router as doors
from casewright.web.help import router as help_
from casewright.web.job_forms import router as job_forms
from casewright.web.job_money import router as job_money
from casewright.web.job_own import router as job_own
from casewright.web.job_page import router as job_page
from casewright.web.jobs import router as jobs
from casewright.web.papers import router as papers
from casewright.web.people import router as people
from casewright.web.plain import router as plain
from casewright.web.quote_options import router as quote_options
from casewright.web.quotes import router as quotes
from casewright.web.search import router as search
from casewright.web.shop_hours import router as shop_hours
from casewright.web.shop_itself import router as shop_itself
from casewright.web.shop_log import router as shop_log
from casewright.web.shop_prices import router as shop_prices
from casewright.web.shop_rate import router as shop_rate
from casewright.web.shop_revisions import router as shop_revisions
from casewright.web.shop_woods import router as shop_woods
from casewright.web.taps import router as taps
from casewright.web.time import router as time_
from casewright.web.unit_books import router as unit_books
from casewright.web.unit_editor import router as unit_editor
from casewright.web.unit_joints import router as unit_joints
from casewright.web.unit_options import router as unit_options
from casewright.web.unit_parts import router as unit_parts
from casewright.web.unit_price import router as unit_price
from casewright.web.unit_start import router as unit_start
from casewright.web.unit_takes import router as unit_takes
from casewright.web.unit_working import router as unit_working

ROUTERS = (
    plain,
    doors,
    account,
    people,
    help_,
    customers,
    shop_itself,
    shop_rate,
    shop_prices,
    shop_hours,
    shop_log,
    shop_woods,
    shop_revisions,
    unit_start,
    unit_editor,
    unit_parts,
    unit_joints,
    unit_takes,
    unit_price,
    unit_working,
    unit_books,
    demo,
    jobs,
    job_forms,
    job_page,
    job_money,
    job_own,
    board,
    bench,
    taps,
    time_,
    search,
    quotes,
    quote_options,
    unit_options,
    papers,
    customer_link,
)
