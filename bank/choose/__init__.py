"""Twins, rules, the draw, the plan ahead, how long the bank lasts."""
