"""Laying out a job's parts on the boards and sheets there are, and cutting by it."""
