"""Marks, mastery, independence: what a learner did, and what the next set makes of it.

Pure: plain values in, plain values out. Nothing here loads more than the standard library. What is
computed is evidence from a classroom, not an evaluation.
"""

CAUTION = "This is classroom evidence, not an evaluation."
