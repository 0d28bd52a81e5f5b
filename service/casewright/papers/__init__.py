"""What is printed: reports as text, orders, cut lists, joint cards and quotes as PDF, data for machines."""
