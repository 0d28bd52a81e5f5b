"""The shop of the pages, for what a paper and its page must say alike."""

from pages.conftest import app, clock, maker, shop

__all__ = ("app", "clock", "maker", "shop")
