"""The key that the aide holds."""

import dataclasses

import pytest

from bank.page import FACES, PAPERS, LearnerPage, PageFix, PageQuestion, PageSentence, key_pdf
from bank.page.key import LEGEND, shared_sentences
from bank.skill import SKILLS


@pytest.mark.parametrize("paper", PAPERS)
def test_the_key_has_all_that_the_aide_marks_with(day, learners, read, paper):
    made = key_pdf(day, learners, paper)
    sheets = read(made)
    assert made.problems == ()
    for page in learners:
        assert page.code in sheets
        if page.sentence:
            assert page.sentence.corrected in sheets
            assert page.sentence.faulty in sheets
            assert all(other in sheets for other in page.sentence.others)
            for fix in page.sentence.fixes:
                assert SKILLS[fix.skill].name in sheets
                assert SKILLS[fix.skill].rule in sheets
        for question in page.questions:
            assert question.text in sheets
            assert question.answer in sheets
            assert all(other in sheets for other in question.others)
        if page.topic:
            assert page.topic.text in sheets
    assert "= a raincoat" in sheets and "also: boots" in sheets
    assert "any answer that fits" in sheets
    assert sheets.title == "Key, Wednesday, November 25, 2026"
    assert sheets.language.startswith("en")
    assert all(sheets.faces().values())


def test_the_key_says_which_of_the_choices_is_right(day, read):
    slide = PageQuestion("What can you do on ice?", ("slide", "plant"), answer="slide")
    feel = PageQuestion("How do you feel?", ("mad", "sad"))
    nap = PageQuestion("Do bears nap?", ("yes", "no"), answer="yes")
    sheets = read(key_pdf(day, [LearnerPage("T7", mode="says", questions=(slide, feel, nap))]))
    assert "= slide to choose from: slide / plant" in sheets
    assert "any answer that fits to choose from: mad / sad" in sheets
    assert "yes / no" not in sheets


def test_one_key_serves_several_faulty_versions(learners):
    first, second = shared_sentences(learners)
    assert [page.code for page in first.owners] == ["K4", "B2"]
    assert [(fix.number, fix.skill) for fix in first.fixes] == [
        (1, "capital-first"),
        (2, "tense"),
        (3, "end-mark"),
    ]
    assert first.theirs == {"K4": (True, True, True), "B2": (False, True, True)}
    assert first.fullest.others == ("The dog has run to the park.",)
    assert [page.code for page in second.owners] == ["T7"]


def test_the_same_fix_twice_in_a_sentence_counts_twice():
    faulty = "i ran and i sat"
    right = "I ran and I sat."
    both = (
        PageFix(1, "capital-i", "i", "I", 0, 1),
        PageFix(2, "capital-i", "i", "I", 10, 11),
        PageFix(3, "end-mark", "", ".", 15, 15),
    )
    less = "I ran and i sat."
    pages = [
        LearnerPage("K4", sentence=PageSentence(faulty, right, both)),
        LearnerPage(
            "B2", sentence=PageSentence(less, right, (PageFix(1, "capital-i", "i", "I", 10, 11),))
        ),
    ]
    (shared,) = shared_sentences(pages)
    assert shared.theirs["K4"] == (True, True, True)
    assert sum(shared.theirs["B2"]) == 1


def test_the_fix_of_a_version_is_found_by_where_the_right_word_stands():
    """Of two that look alike, the one that stands at the same place in the corrected sentence."""
    right = "I ran and I sat."
    full = PageSentence(
        "i ran and i sat.",
        right,
        (PageFix(1, "capital-i", "i", "I", 0, 1), PageFix(2, "capital-i", "i", "I", 10, 11)),
    )
    second = PageSentence("I ran and i sat.", right, (PageFix(1, "capital-i", "i", "I", 10, 11),))
    (shared,) = shared_sentences(
        [LearnerPage("K4", sentence=full), LearnerPage("B2", sentence=second)]
    )
    assert shared.theirs["B2"] == (False, True)


def test_an_error_that_only_a_smaller_version_has_gets_a_row_of_its_own(sentences):
    odd = PageSentence(
        "The dog ran too the park.",
        sentences.full.corrected,
        (PageFix(1, "homophone", "too", "to", 12, 15),),
    )
    pages = [LearnerPage("K4", sentence=sentences.full), LearnerPage("B2", sentence=odd)]
    (shared,) = shared_sentences(pages)
    assert shared.fixes[-1].number == 4
    assert shared.theirs == {"K4": (True, True, True, False), "B2": (False, False, False, True)}


def test_a_fix_that_is_not_where_it_says_is_named_and_the_key_is_made(day, read):
    sentence = PageSentence(
        "the dog", "The dog", (PageFix(1, "capital-first", "cat", "Cat", 0, 3),)
    )
    made = key_pdf(day, [LearnerPage("K4", sentence=sentence)])
    assert made.problems == (
        "key: fix 1 of 'the dog' does not stand where it says: it has no mark",
    )
    assert "The dog" in read(made)


def lowest(page):
    """How far down a page its text goes: 0 at the head, 1 at the foot; its footer does not count."""
    found = []

    def note(text, current, matrix, font, size):
        if text.strip():
            found.append(matrix[5] + current[5])

    page.extract_text(visitor_text=note)
    return 1 - sorted(found)[3] / float(page.mediabox.height)


@pytest.mark.parametrize("count", range(0, 26, 5))
def test_no_page_is_half_empty_and_the_marks_are_explained_in_one_place(
    day, sentences, read, count
):
    """Whatever the length of what comes before."""
    asked = tuple(PageQuestion(f"What is number {n}?", answer=str(n)) for n in range(count))
    other = sentences.other
    pages = [LearnerPage("K0", questions=asked)]
    for number, name in enumerate(("Ben", "Dan", "Tom", "Max", "Sam", "Kim"), 1):
        mine = dataclasses.replace(
            other,
            faulty=other.faulty.replace("ben", name.lower()),
            corrected=other.corrected.replace("Ben", name),
            fixes=tuple(
                dataclasses.replace(fix, wrong=fix.wrong.replace("ben", name.lower()))
                for fix in other.fixes
            ),
        )
        pages.append(LearnerPage(f"K{number}", sentence=mine))
    made = read(key_pdf(day, pages))
    for page in made.reader.pages[:-1]:
        assert lowest(page) > 0.6
    (legend,) = [text for text in made.pages if "What the marks mean" in text]
    assert all(words in legend.replace("\n", " ") for _, words in LEGEND)


@pytest.mark.parametrize("face", FACES)
def test_ten_learners_with_long_texts_fit_side_by_side(day, sentences, read, face):
    long = ("Mr. Lee said, “Bring 3 pens & #2 pencils!” " * 7)[:300]
    page = LearnerPage(
        "K4",
        face=face,
        sentence=sentences.other,
        questions=(PageQuestion(long, answer=long, others=("W" * 40,)),),
    )
    pages = [dataclasses.replace(page, code=f"LEARNER-{number}") for number in range(10)]
    sheets = read(key_pdf(day, pages))
    assert sheets.text.count("".join(long.split())) == 2
    assert "W" * 40 in sheets
