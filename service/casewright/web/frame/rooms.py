"""What is there for whom: the roles of each page, and the tabs of the shop's own pages."""

from collections.abc import Iterable
from typing import Any

from casewright.records.people import Role
from casewright.web.frame.visits import Visit

SHOP_ROOMS = (
    ("/shop", "Shop"),
    ("/shop/rate", "Rate"),
    ("/shop/prices", "Prices"),
    ("/shop/hours", "Hours"),
    ("/shop/woods", "Woods"),
    ("/shop/rack", "Rack"),
    ("/shop/slides", "Slides"),
    ("/shop/people", "People"),
    ("/shop/revisions", "Revisions"),
    ("/shop/demo", "Demo"),
)


def rooms_for(visit: Visit) -> tuple[tuple[str, str], ...]:
    """The tabs of the shop's own pages that exist and are for this person: pairs of address and name."""
    routes = visit.request.app.state.routes
    theirs = {route.path for route in routes if visit.person.role in (roles_of(route) or ())}
    return tuple((address, name) for address, name in SHOP_ROOMS if address in theirs)


def roles_of(route: Any) -> frozenset[Role] | None:
    """Who may come in by a route: nobody in particular is an empty set; None where it does not say."""
    declared = [_roles(each) for each in route.dependant.dependencies]
    return next((roles for roles in declared if roles is not None), None)


def _roles(dependency: Any) -> frozenset[Role] | None:
    roles: frozenset[Role] | None = getattr(dependency.call, "roles", None)
    return roles


def methods_at(routes: Iterable[Any], path: str) -> set[str]:
    """The methods that some page at a path takes."""
    found = [route.methods for route in routes if route.path_regex.match(path)]
    return {method for methods in found for method in methods}
