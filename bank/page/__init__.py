"""What is printed and shown: pages, board, key."""
