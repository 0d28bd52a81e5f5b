"""Kernels compiled by numba: kept between runs, and run without holding the interpreter's lock.

numba keeps them beside the source, or else in the user's cache; in `NUMBA_CACHE_DIR` where that is set. It
asks of a kept kernel only whether the kernel's own file is still the same. But machine code has in it the
kernels that it calls, from other files, too: so here a kernel is kept under the state of all of them.
"""

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar, cast

import numba

Kernel = TypeVar("Kernel", bound=Callable[..., object])

ROOMS = ("guillotine", "lengths", "panels")


def _state() -> tuple[tuple[str, int, int], ...]:
    """Of each file that has kernels its name, when it was changed and how long it is."""
    here = Path(__file__).parent
    files = sorted(file for room in ROOMS for file in (here / room).glob("*.py"))
    return tuple((file.name, file.stat().st_mtime_ns, file.stat().st_size) for file in files)


STATE = _state()


def compiled(kernel: Kernel) -> Kernel:
    """The same function as machine code, compiled at its first call and kept where something can be kept."""
    try:
        fast = numba.njit(cache=True, nogil=True)(kernel)
    except RuntimeError:
        # There is no folder that may be written: better to compile in every process than not to start.
        fast = numba.njit(nogil=True)(kernel)
    else:
        index = fast._cache._cache_file  # type: ignore[attr-defined]
        index._source_stamp = index._source_stamp, STATE
    return cast(Kernel, fast)
