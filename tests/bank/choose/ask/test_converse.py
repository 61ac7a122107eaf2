"""Two opposites with exchanged sides are one ask; only one of the two turned is another."""

import pytest

from bank.choose.ask.active import in_active_voice
from bank.choose.ask.converse import in_one_direction
from bank.choose.ask.wording import one_wording

TURNED_TWICE = [
    ("Who did Dad buy the truck from?", "Who sold Dad the truck?"),
    ("From whom did Dad buy the truck?", "Who sold Dad the truck?"),
    ("What did the neighbor buy from Grandpa?", "What did Grandpa sell to the neighbor?"),
    ("Who borrowed a pencil from the teacher?", "Who did the teacher lend a pencil to?"),
    ("Did Tom borrow a book from Anna?", "Did Anna lend a book to Tom?"),
    ("Who did the red team lose to?", "Who beat the red team?"),
    ("Who lost to the red team?", "Who did the red team beat?"),
    ("Did the cats lose to the dogs?", "Did the dogs beat the cats?"),
    ("What month does May come right after?", "What month comes right before May?"),
    ("Winter comes before which season?", "Which season comes after winter?"),
    ("Which season follows winter?", "Which season comes after winter?"),
    ("Which classmate do you sit in front of?", "Which classmate sits behind you?"),
    ("What is the lamp above?", "What is below the lamp?"),
    ("Who do you live next to?", "Who lives next to you?"),
    ("Are rabbits quieter than dogs?", "Are dogs louder than rabbits?"),
    ("Is a dog less heavy than a cow?", "Is a cow heavier than a dog?"),
    ("Does a cow weigh more than a dog?", "Is a cow heavier than a dog?"),
    ("What is a cow bigger than?", "What is smaller than a cow?"),
    ("Which animal weighs the least?", "Which animal is the lightest?"),
    ("Which month has the fewest days?", "Which month is the shortest?"),
    ("Which animal moves with the least speed?", "Which animal is the slowest?"),
    ("Does Tuesday come after Monday?", "Does Monday come before Tuesday?"),
    ("Is the dog behind the cat?", "Is the cat in front of the dog?"),
    ("Is the ball below the box?", "Is the box above the ball?"),
    ("Which season starts when winter ends?", "Which season comes after winter?"),
    ("Who did you get a letter from?", "Who sent you a letter?"),
    ("How much less is three than five?", "How much more is five than three?"),
    ("What place lends books to people?", "Where can we borrow books?"),
    ("Who does the ball belong to?", "Who owns the ball?"),
    ("What are you afraid of?", "What scares you?"),
    ("Who was the milk spilled by?", "Who spilled the milk?"),
    ("What was eaten by the mouse?", "What did the mouse eat?"),
    ("What was the boy given by his teacher?", "What did his teacher give the boy?"),
    ("Broken cars are repaired by which worker?", "Which worker repairs broken cars?"),
    ("Was the door opened by the cat?", "Did the cat open the door?"),
]
TURNED_ONCE = [
    ("Who did Dad buy the truck from?", "Who bought the truck from Dad?"),
    ("Who did Dad buy the truck from?", "Who did Dad sell the truck to?"),
    ("Who borrowed a pencil from the teacher?", "Who lent a pencil to the teacher?"),
    ("Who did the red team lose to?", "Who did the red team beat?"),
    ("Who did the red team lose to?", "Who lost to the red team?"),
    ("What month does May come right after?", "What month comes right after May?"),
    ("What month does May come right after?", "What month does May come right before?"),
    ("Which classmate do you sit in front of?", "Which classmate sits in front of you?"),
    ("Which classmate do you sit in front of?", "Which classmate do you sit behind?"),
    ("Are rabbits quieter than dogs?", "Are dogs quieter than rabbits?"),
    ("Are rabbits quieter than dogs?", "Are rabbits louder than dogs?"),
    ("What is a cow bigger than?", "What is bigger than a cow?"),
    ("Does Tuesday come after Monday?", "Does Tuesday come before Monday?"),
    ("Does Tuesday come after Monday?", "Does Monday come after Tuesday?"),
    ("Is the dog behind the cat?", "Is the cat behind the dog?"),
    ("Is the ball below the box?", "Is the ball above the box?"),
    ("Which animal weighs the least?", "Which animal weighs the most?"),
    ("What was the boy given by his teacher?", "What did the boy give his teacher?"),
    ("Who was pushed by the boy?", "Who pushed the boy?"),
]


@pytest.mark.parametrize(("a", "b"), TURNED_TWICE)
def test_what_is_turned_twice_has_one_wording(a, b):
    assert one_wording(a) == one_wording(b)


@pytest.mark.parametrize(("a", "b"), TURNED_ONCE)
def test_what_is_turned_once_has_another(a, b):
    assert one_wording(a) != one_wording(b)


@pytest.mark.parametrize(
    "text",
    [
        "what do you do before dinner",
        "who sits behind you",
        "where do you sit at lunch",
        "how do you get home from school",
        "what do you eat by the lake",
        "what do you get from the store",
        "what are you good at",
        "which house is near the park",
    ],
)
def test_what_has_no_other_side_is_left_as_it_was(text):
    assert in_one_direction(in_active_voice(text)) == text
