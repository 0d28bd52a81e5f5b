"""Kernels compiled by numba: kept between runs, and run without holding the interpreter's lock."""

from collections.abc import Callable
from typing import TypeVar, cast

import numba

Kernel = TypeVar("Kernel", bound=Callable[..., object])


def compiled(kernel: Kernel) -> Kernel:
    """The same function as machine code, compiled at its first call and kept beside its source."""
    return cast(Kernel, numba.njit(cache=True, nogil=True)(kernel))
