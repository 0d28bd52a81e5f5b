"""How the tests are shared out: what is slow to make is made once, and what takes long is begun first."""

from collections import Counter, defaultdict
from typing import Any

from xdist.scheduler import LoadScopeScheduling
from xdist.workermanage import WorkerController

DATABASES = ("sqlite", "postgresql")
TOGETHER = ("package", "benchmarks")
"""Folders whose tests share an installed wheel or a filled shop. Elsewhere each file goes out by itself."""
LONGEST = (
    *("browser/test_every_page", *DATABASES, "benchmarks", "package", "browser/test_whole_path"),
    *("papers/test_papers_joint_cards", "records/test_kills", "papers/test_papers_pdf"),
    *("papers/test_papers_settings_card", "records/test_records_migrations", "core/test_guillotine"),
)
"""What is begun first, by the beginnings of its name, so that no process ends long after the other."""


def group_of(nodeid: str) -> str:
    """Which tests a test goes with: those on its database, else those of its folder or its file."""
    path, _, test = nodeid.removeprefix("tests/").partition("::")
    given = test.partition("[")[2].rstrip("]").split("-")
    if database := next((name for name in DATABASES if name in given), ""):
        return database
    folder, _, _ = path.partition("/")
    return folder if folder in TOGETHER else path.removesuffix(".py")


class Sharing(LoadScopeScheduling):
    """Gives a process a whole group at a time, a long one before a short one."""

    def _split_scope(self, nodeid: str) -> str:
        return group_of(nodeid)

    def _assign_work_unit(self, node: WorkerController) -> None:
        self.workqueue.move_to_end(min(self.workqueue, key=place_in_line), last=False)
        super()._assign_work_unit(node)


def place_in_line(group: str) -> int:
    """How early a group is begun."""
    return next((place for place, name in enumerate(LONGEST) if group.startswith(name)), len(LONGEST))


class Hours:
    """What each process was busy with: work that is shared out badly, or that grows, shows at the end."""

    def __init__(self) -> None:
        self.spent: dict[str, Counter[str]] = defaultdict(Counter)

    def pytest_runtest_logreport(self, report: Any) -> None:
        """Notes how long a part of a test took."""
        self.spent[report.node.gateway.id][group_of(report.nodeid)] += report.duration

    def pytest_terminal_summary(self, terminalreporter: Any) -> None:
        """Says what took longest in each process."""
        for process, groups in sorted(self.spent.items()):
            longest = ", ".join(f"{group} {seconds:.0f}" for group, seconds in groups.most_common(8))
            terminalreporter.write_line(f"{process} was busy for {groups.total():.0f} s: {longest}")
