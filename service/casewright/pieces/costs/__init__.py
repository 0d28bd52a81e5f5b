"""What it costs: materials, hours, price and date, of one unit and of a job."""
