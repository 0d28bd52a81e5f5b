"""Looks for inches in what a metric shop reads."""

import re

FRACTION = r"≈?(?:\d+-)?(?!(?:[4-9]|1\d)/4(?!\d))\d+/(?:2|4|8|16|32|64|128)(?![\d/])"
ANY = re.compile(rf'(?<![\d:/.-]){FRACTION}|\d in\b|\d"|(?<!square )(?<!cubic )\binch|\bin-lb\b')
BESIDE_WORDS = re.compile(rf"(?:(?<!m)m|[A-Za-ln-z,;:(]) {FRACTION}|\bin-lb\b")


def inches_in(text: str) -> list[str]:
    """Every place that names inches, with some words around it; classes of lumber, such as 5/4, are names."""
    return [text[max(0, found.start() - 30) : found.end() + 20] for found in ANY.finditer(text)]


def inches_beside_words(text: str) -> list[str]:
    """As `inches_in`, on a sheet that gives inches behind its millimetres: only those that follow a word."""
    return [text[max(0, found.start() - 30) : found.end() + 20] for found in BESIDE_WORDS.finditer(text)]
