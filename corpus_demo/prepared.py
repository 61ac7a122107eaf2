"""What was computed for the demo items, kept beside them so that the demo starts at once.

`python -m corpus_demo.prepared` makes `prepared.jsonl.gz` anew from the sheets: an export of a bank
into which they were imported. The demo uses it while the sheets and the method are those that it was
made from, and computes everything otherwise.
"""

from __future__ import annotations

import gzip
import hashlib
import json
import tempfile
from importlib import resources
from pathlib import Path

SHEETS = ("questions.csv", "sentences.csv", "topics.csv")
PREPARED = "prepared.jsonl.gz"


def sheets_digest() -> str:
    """Stands for the content of the sheets, whatever their line ends."""
    found = hashlib.sha256()
    for name in SHEETS:
        found.update(
            resources.files(__package__).joinpath(name).read_bytes().replace(b"\r\n", b"\n")
        )
    return found.hexdigest()


def prepared_rows(method: str) -> bytes | None:
    """The prepared items as JSON Lines, or None where the sheets or the method have changed."""
    file = resources.files(__package__).joinpath(PREPARED)
    if not file.is_file():
        return None
    head, _, rows = gzip.decompress(file.read_bytes()).partition(b"\n")
    made_from = json.loads(head)
    current = made_from == {"sheets": sheets_digest(), "method": method}
    return rows if current else None


def prepare() -> Path:
    """Import the sheets into a bank of their own and keep what was computed."""
    from bank.assess import method
    from bank.classroom import Bank
    from bank.store import create_store

    home = Path(__file__).parent
    with tempfile.TemporaryDirectory() as folder:
        with Bank(create_store(Path(folder) / "bank.sqlite3")) as bank:
            for name in SHEETS:
                bank.items.bring_in(home / name)
            out = Path(folder) / "rows.jsonl"
            bank.items.send_out(out)
        head = json.dumps({"sheets": sheets_digest(), "method": method()})
        content = f"{head}\n".encode() + out.read_bytes()
    # No time in the file: the same sheets and method give the same bytes.
    (home / PREPARED).write_bytes(gzip.compress(content, mtime=0))
    return home / PREPARED


if __name__ == "__main__":
    print(prepare().name)
