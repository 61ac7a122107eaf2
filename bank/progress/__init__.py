"""Marks, mastery, independence."""
