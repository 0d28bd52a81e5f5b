"""Customers: taking them down, finding them, changing what is known of them."""


def test_a_customer_is_taken_down_and_found_again(maker):
    maker.get("/customers/new")

    maker.send("/customers", name="Ada & Tom <Marsh>", phone="0141 496 0000", note="Two small children.")
    found = maker.get("/customers?q=marsh")

    assert "Ada &amp; Tom &lt;Marsh&gt;" in found.html
    assert "0141 496 0000" in found.text


def test_a_bad_address_is_refused_beside_its_field_and_kept(maker):
    maker.get("/customers/new")

    page = maker.send("/customers", status=422, name="Ada Marsh", email="ada at home", note="Likes ash.")

    assert "“ada at home” is not an e-mail address" in page.text
    assert page.form("/customers").value("email") == "ada at home"
    assert page.form("/customers").value("note") == "Likes ash."
    assert page.seen.title.startswith("Error: ")


def test_a_form_sent_twice_makes_one_customer(maker):
    form = maker.get("/customers/new").form("/customers")
    fields = dict(form.sent()) | {"name": "Ada Marsh"}

    first = maker.post("/customers", **fields)
    second = maker.post("/customers", **fields)

    assert first.address == second.address
    assert "1 customer" in maker.get("/customers").text


def test_of_two_who_save_at_once_the_second_sees_both_texts(maker, owner):
    maker.get("/customers/new")
    maker.send("/customers", name="Ada Marsh", note="Oak.")
    address = maker.page.address.partition("?")[0]
    owner.get(f"{address}/change")
    maker.get(f"{address}/change")
    maker.send(address, note="Walnut.")

    page = owner.send(address, status=409, note="Cherry.")

    assert page.form(address).value("note") == "Cherry."
    assert "Theirs: Walnut." in page.text
    assert "Cherry." in owner.send(address).text


def test_a_double_press_on_save_is_saved_once(maker):
    maker.get("/customers/new")
    maker.send("/customers", name="Ada Marsh", note="Oak.")
    address = maker.page.address.partition("?")[0]
    typed = dict(maker.get(f"{address}/change").form(address).sent()) | {"note": "Walnut."}

    maker.post(f"{address}/change", **typed)
    second = maker.post(f"{address}/change", **typed)

    assert second.address == f"{address}?said=saved"
    assert "Walnut." in second.text


def test_an_empty_list_says_what_to_do_first(maker):
    page = maker.get("/customers")

    assert "Add the first customer" in page.text


def test_the_bench_sees_no_customers(bench):
    page = bench.get("/customers", status=403)

    assert "This page is for the owner or the maker" in page.text


def test_letters_beyond_ascii_are_found_in_either_case(maker):
    maker.get("/customers/new")
    maker.send("/customers", name="Jörg Müller")

    found = maker.get("/customers?q=MÜLLER")

    assert "Jörg Müller" in found.text
