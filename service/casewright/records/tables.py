"""Every table, in one place for the migrations and for what walks over all of them."""

from casewright.records import bench, jobs, layouts, papers, people, stock
from casewright.records.base import Base

METADATA = Base.metadata
ROOMS = (people, jobs, papers, bench, stock, layouts)
