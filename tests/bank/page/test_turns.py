"""The week's turns on the wall."""

import datetime as dt
import re
import shutil
import subprocess

import pytest

from bank.page import PAPERS, TurnRow, turn_sheet

MONDAY = dt.date(2026, 9, 14)
WEEK = [MONDAY + dt.timedelta(days=n) for n in range(5)]


@pytest.mark.skipif(not shutil.which("pdftotext"), reason="pdftotext is not installed")
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("job", ["Plants", "Weather and temperature reporter for the whole class"])
def test_the_days_of_the_week_stand_clear_of_each_other(tmp_path, paper, job):
    made = turn_sheet(WEEK, [TurnRow(job, ("LONGCODE-120",) * 5)], [], paper)
    (tmp_path / "turns.pdf").write_bytes(made.files[0].data)
    boxes = subprocess.run(
        ["pdftotext", "-bbox", "turns.pdf", "-"], cwd=tmp_path, check=True, capture_output=True
    ).stdout.decode()
    found = re.findall(r'xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)".*>(\w+day)<', boxes)
    assert [name for _, _, name in found] == [f"{day:%A}" for day in WEEK]
    edges = [float(edge) for first, last, _ in found for edge in (first, last)]
    assert edges == sorted(edges)
