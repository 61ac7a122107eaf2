"""What is said by half: a question without its verb, a measure without its of, who is meant left out."""

from __future__ import annotations

from bank.check.articles import CONCRETE, countable
from bank.check.engine import Found, at, on_text, on_words
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    DO,
    FUNCTION,
    MODALS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    is_verb_tag,
    noun_phrase,
    plural_of,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.missing import missing_behind
from bank.check.reading import Reading


@on_words(" ".join(DO | MODALS))
def question_without_its_verb(r: Reading, i: int) -> Found:
    """What would you if you found it? How many legs does a spider?

    >>> show("What would you if you lost a tooth?")
    ['missing-word: you if -> you do if']
    >>> show("How many legs does a spider?")
    ['missing-word: spider -> spider have']
    >>> show("What can a whale do? What should you bring? If you could, what would you? What does it?")
    []
    """
    if not r.first[0] or r.lower[0] not in ("what", "how", "where") or r.n < 5:
        return None
    if any(is_verb_tag(r.tag[k]) or r.lower[k] in AUXILIARIES for k in range(i)):
        return None
    if r.lower[0] == "how" and r.lower[1] not in ("many", "much") or i > 4:
        return None
    if r.after(i) in SUBJECTS:
        last = i + 1
        if r.after(last) not in ("if", "when") or i != 1 or r.lower[0] != "what":
            return None
        return missing_behind(r, last, "do")
    phrase = noun_phrase(r, i + 1)
    if phrase is None or phrase.last != r.n - 1 or r.lower[0] != "how" or r.lower[i] not in DO:
        return None
    if (
        verb_forms(r.lower[phrase.last])
        and phrase.last > phrase.first + 1
        or r.lower[i + 1] in SUBJECTS
    ):
        return None
    word = r.words[phrase.last]
    return at(r, phrase.last, "missing-word", "The word “have” may be missing.", f"{word} have")


@on_words("why when where how")
def it_left_out(r: Reading, i: int) -> Found:
    """Why is important to wash your hands?

    >>> show("Why is important to wash your hands?")
    ['missing-word: is important -> is it important']
    >>> show("Why is Sam important to you? Why is being kind good?")
    []
    """
    if r.after(i) not in ("is", "was") or r.after(i + 2) not in ("to", "that") or not r.first[i]:
        return None
    word = r.lower[i + 2]
    if "ADJ" not in lemmas(word) or is_noun(word) and word not in ("good", "safe", "kind"):
        return None
    if r.after(i + 2) == "to" and "VB" not in verb_forms(r.after(i + 3)):
        return None
    return missing_behind(r, i + 1, "it")


_HOLDS = word_set(
    "bag bags box boxes basket baskets bucket buckets can cans handful row rows stack stacks group "
    "groups flock herd pack packs kind kinds type types sort sorts pitcher tray trays crate carton"
)
_NEVER_DO = word_set("bag bags basket row")
_PART = word_set(
    "name names end top bottom middle side edge front rest size shape color part parts start "
    "beginning life lives sound sounds taste smell title date age job weight height length center"
)


@on_words(" ".join(_HOLDS))
def of_behind_what_holds(r: Reading, i: int) -> Found:
    """a bag shells, a row ducks.

    >>> show("She gave me a bag shells. We saw a row ducks.")
    ['missing-word: bag shells -> bag of shells', 'missing-word: row ducks -> row of ducks']
    >>> show("I like the box tops. I can cans. The pack leads. The group plays.")
    []
    """
    after = r.after(i)
    if r.before(i) not in word_set("a this that what which two three some") or r.tag[i][:1] != "N":
        return None
    if not singular_of(after) or r.tag[i + 1] != "NNS":
        return None
    if "VB" in verb_forms(singular_of(after) or "") and r.lower[i] not in _NEVER_DO:
        return None
    return missing_behind(r, i, "of")


@on_words(" ".join(_PART))
def of_behind_a_part(r: Reading, i: int) -> Found:
    """the name the tallest mountain, a day in the life a snowflake.

    >>> show("What is the name the tallest mountain on the map?")
    ['missing-word: name the -> name of the']
    >>> show("This is the name the teacher chose. I like the color my mom wears. Tell the rest the news.")
    []
    """
    if r.before(i) != "the" or r.after(i) not in ARTICLES | POSSESSIVES or not r.near(i + 1):
        return None
    phrase = noun_phrase(r, i + 1)
    if phrase is None or r.lower[i] in ("rest", "start", "job"):
        return None
    last = phrase.last
    if r.lower[last] in AUXILIARIES or any(is_verb_tag(r.tag[k]) for k in range(i + 1, last + 1)):
        return None
    close = next((e for s, e in r.sentences if s <= i < e), r.n)
    if any(
        is_verb_tag(r.tag[k]) or verb_forms(r.lower[k]) & {"VBD", "VBZ"}
        for k in range(last + 1, close)
    ):
        return None
    return missing_behind(r, i, "of")


@on_words("myself yourself himself herself itself ourselves themselves")
def of_before_oneself(r: Reading, i: int) -> Found:
    """felt proud yourself.

    >>> show("Write about a time when you felt proud yourself.")
    ['missing-word: proud yourself -> proud of yourself']
    """
    if r.before(i) not in word_set("proud sure ashamed afraid tired care"):
        return None
    return missing_behind(r, i - 1, "of")


_WRITES = word_set("write draw make build bring find send read paint plan")


@on_text()
def thing_to_write_without_article(r: Reading) -> Found:
    """Write letter to your future self.

    >>> show("Write letter to your future self.")
    ['article: letter -> a letter']
    >>> show("Write down three words. Draw lines. Make sure you read. Write poem titles.")
    []
    """
    if r.n < 4 or r.lower[0] not in _WRITES or not r.near(0) or not r.near(1):
        return None
    word = r.lower[1]
    if word not in word_set(
        "letter story poem picture list sentence paragraph note map card sign song book comic"
    ) or r.after(1) not in PREPOSITIONS | {"that", "to"}:
        return None
    return at(r, 1, "article", f"“{word}” needs a small word like “a” before it.", f"a {word}")


@on_words("let lets")
def who_may_know(r: Reading, i: int) -> Found:
    """let know that.

    >>> show("How did she let know that he was sad?")
    ['missing-word: let know -> let us know']
    """
    return missing_behind(r, i, "us") if r.after(i) == "know" else None


@on_words("without")
def without_asked(r: Reading, i: int) -> Found:
    """without asked.

    >>> show("Tell about a time you helped without asked.")
    ['missing-word: without asked -> without being asked']
    >>> show("A coat without torn sleeves is best.")
    []
    """
    word = r.after(i)
    forms = verb_forms(word)
    if (
        not {"VBD", "VBN"} <= forms
        or is_noun(word)
        or r.after(i + 1)
        and r.after(i + 1) not in PREPOSITIONS | {"to", "and"}
    ):
        return None
    return missing_behind(r, i, "being")


@on_words("because although unless until")
def who_does_it_behind_because(r: Reading, i: int) -> Found:
    """cried because was hungry.

    >>> show("The baby cried because was hungry.")
    ['missing-word: because was -> because it was']
    >>> show("It is because of rain. He wrote because. Some say because is a long word.")
    []
    """
    if r.after(i) not in word_set("is was are were has had wanted needed liked") or r.first[i]:
        return None
    if r.before(i) in ("word", "say", "says", "use") or i < 2:
        return None
    before = [w for w in r.lower[:i] if w in SUBJECTS]
    who = before[-1] if before else "they" if r.after(i) in ("are", "were") else "it"
    return missing_behind(r, i, "I" if who == "i" else who)


_FINDS_OUT = word_set(
    "know knows knew see sees saw forget forgot forgets remember remembers tell told show showed "
    "ask asked wonder wonders find found guess explain"
)


@on_words("where when why")
def bare_thing_behind_where(r: Reading, i: int) -> Found:
    """Nobody knows where key is.

    >>> show("Nobody knows where key is.")
    ['article: key -> the key']
    >>> show("I know where home is. She knows when lunch is. Tell me why water is wet.")
    []
    """
    word = r.after(i)
    if r.before(i) not in _FINDS_OUT or not word or r.words[i + 1][0].isupper():
        return None
    if not countable(word) and word not in CONCRETE or word in FUNCTION or not is_noun(word):
        return None
    if r.after(i + 1) not in ("is", "was", "goes", "went"):
        return None
    return at(
        r, i + 1, "article", f"“{word}” needs a small word like “the” before it.", f"the {word}"
    )


@on_words("how")
def helper_left_out_behind_how_much(r: Reading, i: int) -> Found:
    """How much the pumpkin weigh?

    >>> show("How much the pumpkin weigh?")
    ['missing-word: much the -> much does the']
    >>> show("How much the pumpkin weighs is a secret.")
    []
    """
    if (
        not r.first[i]
        or r.after(i) not in ("much", "many", "long", "far", "often", "fast")
        or r.text.rstrip()[-1:] != "?"
    ):
        return None
    if r.after(i + 1) not in ARTICLES | POSSESSIVES:
        return None
    phrase = noun_phrase(r, i + 2)
    if phrase is None or phrase.last != r.n - 2 or not r.near(phrase.last):
        return None
    verb = r.lower[r.n - 1]
    if "VB" not in verb_forms(verb) or "ADJ" in lemmas(verb):
        return None
    return missing_behind(r, i + 1, "do" if phrase.many else "does")


@on_words("how")
def helper_left_out_behind_how_many(r: Reading, i: int) -> Found:
    """How many legs a spider have?

    >>> show("How many legs a spider have?")
    ['missing-word: legs a -> legs does a']
    >>> show("How many eggs a day does it lay? How many dogs are in the park?")
    []
    """
    if r.after(i) != "many" or not r.first[i] or r.text.rstrip()[-1:] != "?" or r.n < 5:
        return None
    if not singular_of(r.after(i + 1)) or r.after(i + 2) not in ARTICLES | POSSESSIVES:
        return None
    phrase = noun_phrase(r, i + 3)
    if phrase is None or "VB" not in verb_forms(r.after(phrase.last)) or phrase.last < r.n - 3:
        return None
    return missing_behind(r, i + 2, "do" if phrase.many else "does")


@on_words("do")
def one_thing_behind_do(r: Reading, i: int) -> Found:
    """How do plant grow?

    >>> show("How do plant grow?")
    ['plural: plant -> plants']
    >>> show("How do fish sleep? What do math teachers do? Where do Mom and Dad work?")
    []
    """
    j = i + 1
    if r.before(i) not in ("how", "why", "where", "when", "what") or not r.near(i) or not r.near(j):
        return None
    word = r.lower[j]
    if word not in CONCRETE and word not in (
        "plant",
        "animal",
        "insect",
        "river",
        "star",
        "cloud",
        "whale",
    ):
        return None
    if (
        word in ("mom", "dad", "fish", "everyone")
        or "VB" not in verb_forms(r.lower[j + 1])
        or r.words[j][0].isupper()
    ):
        return None
    if (
        is_noun(r.lower[j + 1])
        and j + 2 < r.n
        and (verb_forms(r.lower[j + 2]) or r.lower[j + 2] == "and")
    ):
        return None
    many = plural_of(word)
    return at(r, j, "plural", "There are more than one of these here.", many) if many else None


@on_words("of")
def two_small_words_behind_a_thing(r: Reading, i: int) -> Found:
    """the main character of in the story.

    >>> show("Who is the main character of in the story?")
    ['extra-word: of -> ']
    >>> show("What is he afraid of in the dark? It is made of in part. One of about ten.")
    []
    """
    if r.after(i) not in word_set("in on at for with to") or r.after(i + 1) not in DETERMINERS:
        return None
    if (
        not is_noun(r.before(i))
        or r.tag[i - 1][:1] != "N"
        or r.lower[0] in ("what",)
        and r.tag[i - 1] != "NN"
    ):
        return None
    return at(r, i, "extra-word", "“of” is too many.", "")
