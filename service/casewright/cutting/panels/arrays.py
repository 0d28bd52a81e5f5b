"""The rows of numbers that the compiled loops work on."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Ints: TypeAlias = NDArray[np.int64]
Floats: TypeAlias = NDArray[np.float64]
Flags: TypeAlias = NDArray[np.bool_]

Rule: TypeAlias = tuple[int, int, int]
"""Allowance, narrowest and widest of a strip."""
Parts: TypeAlias = tuple[Ints, Ints, Floats, Ints]
"""Of single parts length, width and value; of panels length."""
Boards: TypeAlias = tuple[Ints, Ints, Ints]
"""Of each board its cost, and for either way of cutting where its clear rectangles begin and end in the list
of these, which are (across, along, width, length)."""
Left: TypeAlias = tuple[Ints, Ints]
"""What is still to be made: copies of each single part, and the net width that each panel still lacks."""
Plan: TypeAlias = tuple[Flags, Ints, Ints, Ints]
"""Of each board whether it is used, its way of cutting, how many rows lie on it, and the rows."""
