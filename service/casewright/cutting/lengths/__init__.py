"""Pieces cut one behind the other from lengths of stock: bars, mouldings, strips ripped to width.

The doors: `problem` says what is asked and what is answered, `solving.solve` answers.
"""
