"""Every page, room by room."""

from casewright.web.account import router as account
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
from casewright.web.people import router as people
from casewright.web.plain import router as plain
from casewright.web.search import router as search
from casewright.web.quote_options import router as quote_options
from casewright.web.quotes import router as quotes
from casewright.web.shop_itself import router as shop_itself
from casewright.web.shop_prices import router as shop_prices
from casewright.web.shop_rate import router as shop_rate
from casewright.web.unit_editor import router as unit_editor
from casewright.web.unit_start import router as unit_start

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
    unit_start,
    unit_editor,
    demo,
    jobs,
    job_forms,
    job_page,
    job_money,
    job_own,
    search,
    quotes,
    quote_options,
    customer_link,
)
