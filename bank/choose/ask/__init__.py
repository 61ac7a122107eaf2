"""What a text asks: frames, their comparison, and the keys that find twins."""
