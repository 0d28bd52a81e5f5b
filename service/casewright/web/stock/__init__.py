"""What is bought and what is there: orders, deliveries, suppliers, the rack, yields."""
