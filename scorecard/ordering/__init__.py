"""How many to order: pure, from landed costs at every real order size and from what the pieces sell for."""
