"""What is asked of a cutting: the cut file, with parts, stock and the habits of the saw."""
