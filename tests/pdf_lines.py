"""The straight lines of a PDF, for tests of what is printed in full size."""

from pypdf.generic import ContentStream

POINTS = 72.0
"""Points in an inch."""


def lines_in(page):
    """Every straight line that a page draws, from point to point, where it comes to stand [pt]."""
    unmoved = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
    stack, here, path, found, start = [], unmoved, [], [], None
    for operands, operator in ContentStream(page.get_contents(), page.pdf).operations:
        match operator:
            case b"q":
                stack.append(here)
            case b"Q":
                here = stack.pop()
            case b"cm":
                here = times([float(each) for each in operands], here)
            case b"m":
                start = moved(operands, here)
            case b"l":
                end = moved(operands, here)
                path.append((start, end))
                start = end
            case b"S":
                found += path
                path = []
            case b"f":
                path = []
    return found


def times(one, other):
    a, b, c, d, e, f = one
    p, q, r, s, t, u = other
    return (
        a * p + b * r,
        a * q + b * s,
        c * p + d * r,
        c * q + d * s,
        e * p + f * r + t,
        e * q + f * s + u,
    )


def moved(point, by):
    x, y = map(float, point)
    return x * by[0] + y * by[2] + by[4], x * by[1] + y * by[3] + by[5]
