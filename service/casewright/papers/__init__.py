"""What is printed: reports as text, data for machines; later cards, quotes and labels."""
