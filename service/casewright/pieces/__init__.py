"""A piece of furniture: from what the maker chose to its parts, joints, checks, take-off and estimate."""
