"""What is taken out with the demo: every table that hangs on a job, those that come later, too."""

from casewright.records.tables import METADATA
from casewright.shop.demo.removal import hanging

ROOTS = {"job", "unit", "carcase", "drawer", "quote", "paper"}


def test_every_table_that_refers_to_a_job_or_its_parts_goes_with_the_demo():
    referring = {
        table.name
        for table in METADATA.sorted_tables
        for key in table.foreign_keys
        if key.column.table.name in ROOTS
    }

    assert referring <= {table.__tablename__ for table in hanging()}


def test_what_refers_to_another_table_goes_before_it():
    order = [table.__tablename__ for table in hanging()]
    pairs = [
        (table.name, key.column.table.name)
        for table in METADATA.sorted_tables
        for key in table.foreign_keys
        if table.name in order and key.column.table.name in order and key.column.table is not table
    ]

    assert [pair for pair in pairs if order.index(pair[0]) > order.index(pair[1])] == []
