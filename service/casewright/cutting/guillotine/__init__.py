"""Layouts of rectangles on boards and sheets by straight cuts from edge to edge, in two or three stages.

The doors: `problem` says what is asked and what is answered, `solving.solve` answers, `bounds.bound` says how
little any answer could cost.
"""
