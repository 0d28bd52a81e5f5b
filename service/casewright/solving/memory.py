"""How much memory a process beside the pages may take."""

MEMORY = 2 * 1024**3
"""Address space: work beyond all measure ends in its own process and not in the service."""


def limit_memory() -> None:
    """Limits this process, where the system can: Windows has no such limit."""
    try:
        import resource  # noqa: PLC0415 - it is not on every system
    except ImportError:
        return
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
