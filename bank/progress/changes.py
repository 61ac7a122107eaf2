"""What changed for a learner, in a few words: a phase line on the charts."""

from __future__ import annotations

from bank.learner import Learner, grade_word


def change_words(old: Learner, new: Learner) -> list[str]:
    """What a team should see on a chart: band, number of errors, response mode, states of skills.

    >>> from bank.learner import Band
    >>> old = Learner(1, "K4", "star", 2.0, Band(0, 1.5), skills={"tense": "in-work"})
    >>> new = Learner(1, "K4", "star", 2.0, Band(0, 1.0), skills={"tense": "mastered"})
    >>> change_words(old, new)
    ['band K to 1', 'tense mastered']
    """
    words = []
    if old.band != new.band:
        words.append(f"band {grade_word(new.band.low)} to {grade_word(new.band.high)}")
    if old.errors != new.errors:
        words.append(f"{new.errors} errors")
    if old.mode != new.mode:
        words.append(str(new.mode))
    for skill in sorted({*old.skills, *new.skills}):
        was, now = old.skills.get(skill), new.skills.get(skill)
        if was != now and "in-work" in (was, now) or was != now and "mastered" in (was, now):
            words.append(f"{skill} {now or 'off'}")
    return words
