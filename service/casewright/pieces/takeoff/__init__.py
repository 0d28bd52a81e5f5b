"""What the piece takes: rough sizes, drivers of the hours, the lumber order."""
