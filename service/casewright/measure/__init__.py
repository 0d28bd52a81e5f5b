"""Lengths, units, rounding, money, verdicts, and the ledger that keeps the working."""
