"""What a good piece costs at the door: from replies as they come to an itemised sum. Pure, and exact in decimal."""
