"""Casewright: job costing, joinery, cut lists and lumber orders for a small furniture shop."""

__version__ = "0.1.0"
