"""The group of the form that asks where and how a piece will stand."""

from casewright.web.units.fields import Group, ask

USE_GROUP = Group(
    key="use",
    title="Use and safety",
    note="What the screens of tipping, strength and lifting ask. Only the test of the standard decides.",
    fields=(
        ask("use.clothing", "For clothing", lead=True, unticked="not for clothing"),
        ask(
            "use.free_standing",
            "Stands free, not fixed to the building",
            lead=True,
            unticked="fixed to the building",
        ),
        ask("use.travel_share", "Drawers open to, share of length"),
        ask(
            "use.interlock",
            "Interlock",
            (("none", "none (usual)"), ("one at a time", "one drawer opens at a time")),
            lead=True,
        ),
        ask("use.jam_friction", "Friction for the jam check"),
        ask("use.shelf_load_lb", "Load of a shelf, lb a foot"),
        ask("use.lift_lb", "One person carries, lb"),
        ask("use.fixing_lb", "One wall fixing holds, lb"),
        ask("use.fixing_factor", "Factor of a wall fixing"),
    ),
)
