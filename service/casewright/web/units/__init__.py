"""A unit: its form beside the drawing, parts, joints, hours, price and the working behind them."""
