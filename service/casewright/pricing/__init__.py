"""Shop rate, price lists, the price with its risk, and the stages in which it is paid."""
