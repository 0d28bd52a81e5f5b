"""Customers and their jobs: lists, a job with its papers, money and history, search."""
