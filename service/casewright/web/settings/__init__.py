"""What the shop holds true: rates, standards, prices, woods and its own words."""
