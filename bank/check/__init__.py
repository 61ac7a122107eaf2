"""What is wrong with a text, and what a literal reader may stumble over."""
