"""What is written of it: descriptions, options, terms, the offer."""
