"""Align, name, explain, make and mark the errors of a sentence."""
