"""What is kept: tables, queries, sessions, and the fence around each shop."""
