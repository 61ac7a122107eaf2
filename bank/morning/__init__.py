"""Turns, word sorts, quiet reading, the steps of the routine."""
