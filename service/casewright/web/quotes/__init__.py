"""Quotes and papers: what is sent to a customer and to the yard."""
