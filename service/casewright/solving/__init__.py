"""Work that takes seconds and a core of its own: done in a process beside the pages, within limits."""
