"""What `plant` can break in a correct sentence, the check should see."""

from __future__ import annotations

import csv
import random
from collections import Counter
from importlib.resources import files

from bank.check import check_many
from bank.edit import places, plant

SURE = {
    "capital-first", "capital-i", "end-mark", "apostrophe-contraction", "agreement", "tense",
    "plural", "spelling",
}  # fmt: skip


def planted(count: int) -> list[tuple[str, str]]:
    """Faulty sentences with one error each, the skills as even as the sentences allow."""
    with (files("corpus_demo") / "sentences.csv").open(encoding="utf-8") as file:
        sentences = [row["text"] for row in csv.DictReader(file)]
    chance = random.Random(11)
    chance.shuffle(sentences)
    made: list[tuple[str, str]] = []
    tally: Counter[str] = Counter()
    for text in sentences:
        skills = sorted(set(places(text)), key=lambda s: (tally[s], s))
        for skill in skills[:2]:
            try:
                made.append((skill, plant(text, [skill], seed=chance.randrange(99))))
            except ValueError:
                continue
            tally[skill] += 1
        if len(made) >= count:
            break
    return made


def test_most_errors_made_on_purpose_are_seen() -> None:
    made = planted(300)
    seen: Counter[str] = Counter()
    total: Counter[str] = Counter()
    for (skill, _), found in zip(made, check_many((t, "sentence") for _, t in made), strict=True):
        total[skill] += 1
        seen[skill] += any(finding.code == skill for finding in found)
    assert sum(seen.values()) / sum(total.values()) >= 0.8
    sure = [skill for skill in SURE if total[skill]]
    assert sum(seen[s] for s in sure) / sum(total[s] for s in sure) >= 0.85
