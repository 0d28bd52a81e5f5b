"""The formulas of case and drawers, one by one: what a size is made of."""
