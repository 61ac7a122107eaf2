"""Printed files: saved with clear names, and forgotten when the day is done."""

from bank.page import PageFile, binder_pages, board_html, forget, key_pdf, save, strips


def test_what_is_made_is_saved_and_forgotten_again(day, learners, tmp_path):
    folder = tmp_path / "prints" / "today"
    made = [
        *binder_pages(day, learners).files,
        *strips(day, learners, "a4").files,
        *strips(day, learners[4:], wall=True).files,
        *key_pdf(day, learners).files,
        *board_html(day, learners).files,
    ]
    written, problems = save(made, folder)
    assert problems == []
    assert sorted(path.name for path in written) == [
        "2026-11-25-board.html",
        "2026-11-25-key-letter.pdf",
        "2026-11-25-pages-letter.pdf",
        "2026-11-25-strips-a4.pdf",
        "2026-11-25-wall-strips-letter.pdf",
    ]
    assert all(len(file.data) < 2_000_000 for file in made)
    deleted, problems = forget(folder)
    assert sorted(deleted) == sorted(written)
    assert problems == [] and not folder.exists()


def test_forgetting_leaves_what_is_somebody_elses(day, learners, tmp_path):
    save(binder_pages(day, learners).files, tmp_path)
    (tmp_path / "letter home.txt").write_text("Dear family", encoding="utf-8")
    deleted, problems = forget(tmp_path)
    assert len(deleted) == 1
    assert problems == ["letter home.txt was not printed from the bank: it stays"]
    assert (tmp_path / "letter home.txt").exists()


def test_a_folder_that_cannot_be_written_is_one_line(tmp_path):
    (tmp_path / "prints").write_text("not a folder", encoding="utf-8")
    written, problems = save([PageFile("2026-11-25-key.pdf", b"")], tmp_path / "prints")
    assert written == []
    assert len(problems) == 1 and "prints is a file, not a folder" in problems[0]


def test_a_file_that_cannot_be_written_leaves_the_others(tmp_path):
    (tmp_path / "2026-11-25-key.pdf").mkdir()
    written, problems = save(
        [PageFile("2026-11-25-key.pdf", b"a"), PageFile("2026-11-25-pages.pdf", b"b")], tmp_path
    )
    assert [path.name for path in written] == ["2026-11-25-pages.pdf"]
    assert len(problems) == 1 and "cannot be written" in problems[0]


def test_a_folder_that_is_not_there_is_one_line(tmp_path):
    assert forget(tmp_path / "none") == ([], [f"there is no folder {tmp_path / 'none'}"])
