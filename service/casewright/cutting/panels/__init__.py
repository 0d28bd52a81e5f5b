"""Glued-up panels planned together with single parts: each strip is as wide as the board in hand allows."""
