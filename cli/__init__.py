"""The command: one file for each person."""
