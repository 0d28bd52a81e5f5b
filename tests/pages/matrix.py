"""Who may come in where: every page of the program, and for whom it is. A new page needs its line here."""

OWNER, OFFICE, ALL, ANYBODY = {"owner"}, {"owner", "maker"}, {"owner", "maker", "bench"}, set[str]()

MATRIX: dict[str, set[str]] = {
    "GET /": ALL,
    # the door
    "GET /set-up": ANYBODY,
    "POST /set-up": ANYBODY,
    "GET /sign-in": ANYBODY,
    "POST /sign-in": ANYBODY,
    "POST /sign-out": ALL,
    "GET /invitation/{secret}": ANYBODY,
    "POST /invitation/{secret}": ANYBODY,
    "GET /password/{secret}": ANYBODY,
    "POST /password/{secret}": ANYBODY,
    "GET /help": ANYBODY,
    # own account
    "GET /account": ALL,
    "POST /account": ALL,
    "GET /account/password": ALL,
    "POST /account/password": ALL,
    "POST /account/sign-ins/end": ALL,
    "POST /account/sign-ins/{sign_in_id}/end": ALL,
    # the shop's own figures
    "GET /shop": OWNER,
    "POST /shop": OWNER,
    "GET /shop/rate": OWNER,
    "POST /shop/rate": OWNER,
    "POST /shop/rate/look": OWNER,
    "GET /shop/prices": OWNER,
    "POST /shop/prices": OWNER,
    "GET /shop/hours": OWNER,
    "POST /shop/hours": OWNER,
    "GET /shop/hours/log": OWNER,
    "POST /shop/hours/log": OWNER,
    # people
    "GET /shop/people": OWNER,
    "POST /shop/people/invitations": OWNER,
    "POST /shop/people/invitations/{link_id}/end": OWNER,
    "GET /shop/people/{person_id}": OWNER,
    "POST /shop/people/{person_id}/role": OWNER,
    "POST /shop/people/{person_id}/password": OWNER,
    "POST /shop/people/{person_id}/sign-ins/end": OWNER,
    "POST /shop/people/{person_id}/sign-ins/{sign_in_id}/end": OWNER,
    "POST /shop/people/{person_id}/end": OWNER,
    # customers
    "GET /customers": OFFICE,
    "POST /customers": OFFICE,
    "GET /customers/new": OFFICE,
    "GET /customers/{customer_id}": OFFICE,
    "GET /customers/{customer_id}/change": OFFICE,
    "POST /customers/{customer_id}/change": OFFICE,
}
