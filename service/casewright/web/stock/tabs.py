"""The pages of this room, for whom they are."""

from casewright.web.frame.visits import Visit

RACK = ("/stock", "Rack")
DELIVERIES = ("/stock/deliveries", "Deliveries")
OFFICE_TABS = (
    RACK,
    ("/stock/orders", "Orders"),
    DELIVERIES,
    ("/stock/suppliers", "Suppliers"),
    ("/stock/yields", "Yields"),
)


def tabs_for(visit: Visit) -> tuple[tuple[str, str], ...]:
    """The tabs that somebody may open: pairs of address and name."""
    return OFFICE_TABS if visit.sees_prices else (RACK, DELIVERIES)
