"""What was asked for: the unit file and the shop file, their fields, defaults and refusals."""
