"""Kernels compiled by numba: kept between runs, and run without holding the interpreter's lock.

numba keeps them beside the source, or else in the user's cache; in `NUMBA_CACHE_DIR` where that is set.
"""

from collections.abc import Callable
from typing import TypeVar, cast

import numba

Kernel = TypeVar("Kernel", bound=Callable[..., object])


def compiled(kernel: Kernel) -> Kernel:
    """The same function as machine code, compiled at its first call and kept where something can be kept."""
    try:
        fast = numba.njit(cache=True, nogil=True)(kernel)
    except RuntimeError:
        # There is no folder that may be written: better to compile in every process than not to start.
        fast = numba.njit(nogil=True)(kernel)
    return cast(Kernel, fast)
