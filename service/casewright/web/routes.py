"""Every page, room by room."""

from casewright.web.account import router as account
from casewright.web.customers import router as customers
from casewright.web.doors import router as doors
from casewright.web.help import router as help_
from casewright.web.people import router as people
from casewright.web.plain import router as plain
from casewright.web.shop_itself import router as shop_itself
from casewright.web.shop_rate import router as shop_rate

ROUTERS = (plain, doors, account, people, help_, customers, shop_itself, shop_rate)
