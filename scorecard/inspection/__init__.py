"""What arrived: how many to open, what the counts say, what to claim."""
