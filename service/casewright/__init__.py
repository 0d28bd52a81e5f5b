"""Casewright: job costing, joinery, cut lists and lumber orders for a small furniture shop."""
