"""New errors of an attempt: one for each run of differences, named as the fixes are."""

from __future__ import annotations

from collections.abc import Sequence

from bank.edit.fix import Fix
from bank.edit.layers import name_word
from bank.edit.look import Change, Sentence
from bank.edit.net import Walked
from bank.edit.pieces import Piece
from bank.edit.rules_gaps import LEFT_OUT, TOO_MANY
from bank.edit.tokens import END_MARKS, QUOTES, Token
from bank.edit.versions import Comparison

# So many words in a row that are left out or added are one error: the copy broke off, or rambled.
_RUN = 3


def one_error_each(
    found: Sequence[tuple[int, Walked]], known: Comparison, written: Sequence[Token], attempt: str
) -> list[Fix]:
    """One fix for each group of steps that is one error."""

    sentence = Sentence(written, known.pieces.corrected, known.corrected)
    return [_fix(group, sentence, known, attempt) for group in _groups(found)]


def _groups(found: Sequence[tuple[int, Walked]]) -> list[list[Walked]]:
    """Steps side by side: a mark goes with its word, and a long run of gaps is one."""
    groups: list[list[Walked]] = []
    last = -2
    for at, step in found:
        beside = at == last + 1 and bool(groups)
        if beside and (_is_mark(step) or all(map(_is_mark, groups[-1]))):
            groups[-1].append(step)
        else:
            groups.append([step])
        last = at
    return _long_runs(groups, found)


def _long_runs(
    groups: list[list[Walked]], found: Sequence[tuple[int, Walked]]
) -> list[list[Walked]]:
    place = {id(step): at for at, step in found}
    merged: list[list[Walked]] = []
    run: list[list[Walked]] = []

    def close() -> None:
        if len(run) >= _RUN:
            merged.append([step for group in run for step in group])
        else:
            merged.extend(run)
        run.clear()

    for group in groups:
        one_sided = all(step.edge is None or step.a is None for step in group)
        follows = bool(run) and place[id(group[0])] == place[id(run[-1][-1])] + 1
        same_side = bool(run) and (run[-1][-1].edge is None) == (group[0].edge is None)
        if not (one_sided and follows and same_side):
            close()
        if one_sided:
            run.append(group)
        else:
            merged.append(group)
    close()
    return merged


def _is_mark(step: Walked) -> bool:
    token = step.edge.token if step.edge is not None else None
    return token is not None and not token.is_word


def _fix(group: Sequence[Walked], sentence: Sentence, known: Comparison, attempt: str) -> Fix:
    mine = [step.a for step in group if step.a is not None]
    right = [step.edge.j for step in group if step.edge is not None and step.edge.j >= 0]
    w0 = sentence.f[min(mine)].start if mine else 0
    w1 = sentence.f[max(mine)].end if mine else w0
    row = known.pieces.corrected
    r0 = row[min(right)].start if right else 0
    r1 = row[max(right)].end if right else r0
    wanted = known.corrected[r0:r1]
    if not right:
        wanted = " ".join(
            step.edge.token.text for step in group if step.edge is not None and step.edge.token
        )
    skill, sure = name_difference(mine, right, sentence)
    return Fix(skill, attempt[w0:w1], wanted, w0, w1, r0, r1, sure)


_MARK_SKILLS = dict.fromkeys(END_MARKS, "end-mark") | dict.fromkeys(QUOTES, "quotation-marks")


def name_difference(mine: Sequence[int], right: Sequence[int], s: Sentence) -> tuple[str, bool]:
    """The skill of one difference between attempt tokens and corrected tokens."""
    if len(mine) == 1 and len(right) == 1:
        f, c = s.f[mine[0]], s.c[right[0]]
        if f.is_word and c.is_word and f.text != c.text:
            piece = Piece(mine[0], mine[0] + 1, right[0], right[0] + 1)
            name_word(piece, f.text, c.text, s)
            draft = next(iter(piece.layers.values()))
            return draft.skill, draft.sure
        return ("end-mark" if c.text in END_MARKS else "extra-word"), False
    if len(mine) > 1 or len(right) > 1:
        return ("missing-word" if not mine else "extra-word" if not right else "spacing"), False
    if not mine and not right:
        return "missing-word", False
    at_f, at_c = (mine or [0])[0], (right or [0])[0]
    token = s.f[at_f] if mine else s.c[at_c]
    if not token.is_word:
        return _MARK_SKILLS.get(token.key, "comma-list"), False
    wrong, wanted = (token.key, "") if mine else ("", token.key)
    change = Change(wrong, wanted, at_f, at_c, s)
    rules = TOO_MANY if mine else LEFT_OUT
    verdict = next(v for rule in rules if (v := rule(change)) is not None)
    return verdict.skill, verdict.sure
