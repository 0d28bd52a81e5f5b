"""What every page stands on: who asks, what was typed, how a page and a refusal are shown."""
