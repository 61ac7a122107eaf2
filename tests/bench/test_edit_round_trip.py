"""2,000 faulty versions made from the demo sentences: what comes back is exactly what was made."""

from __future__ import annotations

import csv
import random
from collections import Counter
from importlib.resources import files

import pytest

from bank.edit import compare, places, plant
from bank.skill import SKILLS

MADE = 2000
LEAST = 30


def demo_sentences() -> list[str]:
    with (files("corpus_demo") / "sentences.csv").open(encoding="utf-8", newline="") as rows:
        return [row["text"] for row in csv.DictReader(rows)]


@pytest.mark.bench
def test_what_was_made_comes_back(capsys: pytest.CaptureFixture[str]) -> None:
    """Half of the versions have one error, the others up to six; scarce skills come up as often."""
    rng = random.Random(4)
    sentences = demo_sentences()
    allowed = {text: places(text) for text in sentences}
    homes = {code: [t for t in sentences if code in allowed[t]] for code in SKILLS}
    made = exact = refused = 0
    seen: Counter[str] = Counter()
    while made < MADE:
        rare = min(SKILLS, key=lambda code: (seen[code], code)) if homes else ""
        text = rng.choice(homes[rare]) if homes[rare] else rng.choice(sentences)
        most = min(6, len(allowed[text]))
        count = 1 if made % 2 else rng.randint(1, most)
        others = [code for code in allowed[text] if code != rare]
        skills = [rare, *rng.sample(others, min(count - 1, len(others)))]
        try:
            faulty = plant(text, skills, seed=made)
        except ValueError:
            refused += 1
            seen[rare] += 1
            continue
        made += 1
        seen.update(skills)
        exact += Counter(fix.skill for fix in compare(faulty, text)) == Counter(skills)
    with capsys.disabled():
        print(f"\n{exact} of {made} come back exactly ({exact / made:.4f}); {refused} refused")
        print(f"least made: {seen.most_common()[-3:]}")
        print(f"sentences with a place: { {code: len(t) for code, t in homes.items()} }")
    assert exact == made
    assert min(seen[code] for code in SKILLS) >= LEAST
