"""Several differences that are one error: a move, a speech, two sentences in one, a list.

Each function looks at the pieces in the order of the corrected version, finds those of its kind
that no one has claimed, and gives them one draft.
"""

from __future__ import annotations

from bank.edit import lexicon
from bank.edit.layers import capital_skill
from bank.edit.look import Change, Sentence
from bank.edit.pieces import Draft, Piece, Pieces
from bank.edit.rules_commas import COMMAS
from bank.edit.sets import AUXILIARIES, JOINERS, PRONOUNS
from bank.edit.tokens import END_MARKS, QUOTES

_ONE_FOR_ALL = ("comma-list", "comma-date", "comma-place")


class Merger:
    """The pieces of one pair, and the groups found in them."""

    def __init__(self, pieces: Pieces, sentence: Sentence) -> None:
        self.pieces = pieces
        self.s = sentence
        self.row = pieces.corrected_row()

    def run(self) -> None:
        """Find every group, the widest first."""
        self.moves()
        self.first_word()
        self.speech()
        self.two_sentences()
        self.verb_groups()
        self.commas()

    # -- what a piece is

    def wrong(self, piece: Piece) -> str:
        return " ".join(token.key for token in self.s.f[piece.i0 : piece.i1])

    def right(self, piece: Piece) -> str:
        return " ".join(token.key for token in self.s.c[piece.j0 : piece.j1])

    def is_free_change(self, piece: Piece) -> bool:
        f, c = self.s.f[piece.i0 : piece.i1], self.s.c[piece.j0 : piece.j1]
        return not piece.layers and [t.text for t in f] != [t.text for t in c]

    def is_left_out(self, piece: Piece) -> bool:
        return piece.i0 == piece.i1 and not piece.layers

    def is_too_many(self, piece: Piece) -> bool:
        return piece.j0 == piece.j1 and not piece.layers

    def only_capital(self, piece: Piece) -> bool:
        return (
            piece.i1 - piece.i0 == 1
            and piece.j1 - piece.j0 == 1
            and self.s.f[piece.i0].key == self.s.c[piece.j0].key
            and self.s.f[piece.i0].text != self.s.c[piece.j0].text
        )

    def capital_differs(self, piece: Piece) -> bool:
        if not (piece.i1 > piece.i0 and piece.j1 > piece.j0):
            return False
        w, r = self.s.f[piece.i0].text[0], self.s.c[piece.j0].text[0]
        return w.isalpha() and r.isalpha() and w.isupper() != r.isupper()

    def is_left_out_at(self, at: int) -> bool:
        piece = self.row[at]
        return piece.i0 == piece.i1

    # -- groups

    def moves(self) -> None:
        """Words in the wrong order; `me and Ben` is a pronoun."""
        for move in self.pieces.moves:
            inside = self.pieces.row[move.start : move.end]
            words = {self.wrong(piece) for piece in inside}
            first, last = self.wrong(inside[0]), self.wrong(inside[-1])
            is_pair = "and" in words and (first in PRONOUNS or last in PRONOUNS)
            move.draft.skill = "pronoun" if is_pair else "word-order"
            move.draft.pieces = list(inside)
            for piece in inside:
                wrong, right = self.wrong(piece), self.right(piece)
                if wrong != right and wrong in ("me", "i", "myself") and right in ("i", "me"):
                    piece.layers["whole"] = move.draft

    def first_word(self) -> None:
        """Where the first word itself changes, the capital belongs to the place."""
        s, row = self.s, self.pieces.row
        count = 0
        while count < len(row) and not (
            row[count].i1 > row[count].i0 and row[count].j1 > row[count].j0
        ):
            count += 1
        for move in self.pieces.moves:
            if move.start <= count:
                count = max(count, move.end - 1)
        if not count or not s.c or not s.c[0].is_word or not s.f or not s.f[0].is_word:
            return
        if self._keeps_capital():
            return
        starts_as_name = s.is_name(0)
        if starts_as_name and s.f[0].text[0].islower():
            return
        self.pieces.loose = min(count + 1, len(row))
        self.pieces.small_c = not starts_as_name and s.c[0].text[0].isupper()
        is_lower = s.f[0].text[0].islower()
        was_first = next(p for p in row if p.i1 > p.i0 == 0)
        is_name = was_first.j1 > was_first.j0 and s.is_name(was_first.j0)
        f_is_name = is_name or s.f[0].text.split("'")[0] == "I"
        self.pieces.small_f = not is_lower and not f_is_name
        for move in self.pieces.moves:
            for piece in self.pieces.row[move.start : move.end]:
                # "Truck A is big": the capital goes with its word to the start.
                has_capital = piece.j0 == 0 < piece.i0 and not self.capital_differs(piece)
                if has_capital and self.pieces.small_c and not piece.layers:
                    piece.claim(move.draft, "capital")
        if is_lower and not starts_as_name and s.f[0].key != "i":
            draft = Draft("capital-first")
            draft.pieces.append(self.row[0])
            self.pieces.lead = draft

    def _keeps_capital(self) -> bool:
        """Whether the right first word has its capital though others stand before it.

        `so The dog ran`, `dog The ran`: with the words gone or moved nothing is left to repair.
        """
        row = self.pieces.row
        first = next((p for p in row if p.j1 > p.j0 == 0), None)
        if first is None or not first.i1 > first.i0 > 0 or self.capital_differs(first):
            return False
        only_dropped = all(piece.j0 == piece.j1 for piece in row[: row.index(first)])
        return only_dropped or self.s.f[0].text[0].islower()

    def speech(self) -> None:
        """Talking marks of one speech, with its comma and the capital they bring."""
        drafts: list[Draft] = []
        changed = [
            at
            for at, piece in enumerate(self.row)
            if self.is_free_change(piece)
            and (self._is_quote(self.right(piece)) or self._is_quote(self.wrong(piece)))
        ]
        quotes = [at for at, piece in enumerate(self.row) if self._is_quote(self.right(piece))]
        for number, at in enumerate(changed):
            piece = self.row[at]
            rank = quotes.index(at) if at in quotes else None
            partner = None
            if rank is not None and rank % 2 == 1:
                partner = self.row[quotes[rank - 1]].layers.get("whole")
            if partner is None and rank is None and number and drafts:
                partner = drafts[-1]
            if (
                partner is None
                and rank is not None
                and drafts
                and not drafts[-1].pieces[0].j1 - drafts[-1].pieces[0].j0
            ):
                partner = drafts[-1]
            draft = partner or Draft("quotation-marks")
            if partner is None:
                drafts.append(draft)
            piece.claim(draft)
            for beside in (at - 1, at + 1):
                self._speech_comma(beside, draft)
            if rank is not None and rank % 2 == 0 and at + 1 < len(self.row):
                self._speech_capital(self.row[at + 1], draft)

    @staticmethod
    def _is_quote(text: str) -> bool:
        return text in QUOTES

    def _speech_comma(self, at: int, draft: Draft) -> None:
        if not 0 <= at < len(self.row):
            return
        piece = self.row[at]
        wrong, right = self.wrong(piece), self.right(piece)
        if self.is_free_change(piece) and ("," in (wrong, right) or (wrong, right) == (".", "")):
            piece.claim(draft)

    def _speech_capital(self, piece: Piece, draft: Draft) -> None:
        if not self.capital_differs(piece) or piece.j0 <= 1:
            return
        wrong, right = self.s.f[piece.i0].text, self.s.c[piece.j0].text
        if capital_skill(wrong, right, piece.j0, self.s) in ("capital-first", "capital-extra"):
            piece.claim(draft, "capital")

    def two_sentences(self) -> None:
        """Two sentences run together, with the capital or the joiner that parts them."""
        for at, piece in enumerate(self.row):
            if not self.is_free_change(piece):
                continue
            right, wrong = self.right(piece), self.wrong(piece)
            if right in END_MARKS or right == ";":
                self._full_stop(at, wrong)
            elif right == "" and wrong in END_MARKS:
                self._stop_too_many(at)
            elif right in JOINERS and wrong == "":
                self._joiner(at)

    def _next_word(self, at: int) -> int | None:
        for k in range(at + 1, len(self.row)):
            piece = self.row[k]
            if piece.j1 > piece.j0 and self.s.c[piece.j0].is_word:
                return k
            if piece.j1 > piece.j0 and self.right(piece) not in QUOTES:
                return None
        return None

    def _full_stop(self, at: int, wrong: str) -> None:
        following = self._next_word(at)
        piece = self.row[at]
        if following is None or wrong in END_MARKS:
            return
        after = self.row[following]
        is_speech = any(self._is_quote(self.right(p)) for p in self.row[at + 1 : following])
        if is_speech and not self.s.c[after.j0].text[:1].isupper():
            return
        draft = Draft("run-on")
        dropped = [
            p
            for p in self.row[at + 1 : following]
            if self.is_too_many(p) and self.wrong(p) in JOINERS | {"then", ","}
        ]
        before = self.row[at - 1] if at else None
        if (
            before is not None
            and self.is_too_many(before)
            and self.wrong(before) in JOINERS | {","}
        ):
            dropped.append(before)
        has_small = self.capital_differs(after) or not (after.i1 > after.i0)
        is_bare = wrong == "" and not dropped and self.right(piece) != ";"
        if is_bare and not has_small and not self.s.is_name(after.j0):
            draft = Draft("end-mark", sure=False)
        piece.claim(draft)
        for beside in self.row[at + 1 :]:
            # The second sentence may need a beginning of its own.
            if not self.is_left_out(beside):
                break
            beside.claim(draft)
        for extra in dropped:
            extra.claim(draft)
        if self.capital_differs(after) and self.s.c[after.j0].text not in ("I",):
            after.claim(draft, "capital")

    def _stop_too_many(self, at: int) -> None:
        following = self._next_word(at)
        if following is None:
            return
        draft = Draft("end-mark", sure=False)
        self.row[at].claim(draft)
        if self.capital_differs(self.row[following]):
            self.row[following].claim(draft, "capital")

    def _joiner(self, at: int) -> None:
        piece = self.row[at]
        s, j = self.s, piece.j0
        if not (s.clause_ahead(j + 1) and s.clause_behind(j)):
            return
        draft = Draft("run-on")
        piece.claim(draft)
        before = self.row[at - 1] if at else None
        if before is not None and self.is_free_change(before) and self.right(before) == ",":
            before.claim(draft)

    def verb_groups(self) -> None:
        """A helping verb that comes or goes together with the form of its verb."""
        for at, piece in enumerate(self.row[:-1]):
            after = self.row[at + 1]
            pair = after.i1 - after.i0 == 1 and after.j1 - after.j0 == 1
            if not pair or not self.is_free_change(after):
                continue
            wrong, right = self.wrong(after), self.right(after)
            is_form = bool(lexicon.lemmas(wrong) & lexicon.lemmas(right))
            is_form = is_form or any(
                wrong in lexicon.child_verb_forms(lemma) for lemma in lexicon.lemmas(right, "VERB")
            )
            helper = self.wrong(piece) if self.is_too_many(piece) else self.right(piece)
            if wrong in ("ain't", "aint") and right == "not" and self.is_free_change(piece):
                # "I ain't" for "I'm not": the verb has gone over to the word before.
                draft = Draft("agreement", sure=False)
                piece.claim(draft)
                after.claim(draft)
                continue
            one_sided = self.is_too_many(piece) or self.is_left_out(piece)
            if not (one_sided and is_form):
                continue
            is_no = self.is_too_many(piece) and helper.replace("'", "").endswith("nt")
            if is_no and self.s.has_negative(-1):
                skill = "double-negative"
            elif helper in AUXILIARIES:
                skill = "tense"
            elif helper in ("more", "most"):
                skill = "comparison"
            else:
                continue
            draft = Draft(skill)
            piece.claim(draft)
            after.claim(draft)

    def commas(self) -> None:
        """Commas that are missing or too many; those of one list, date or place are one error."""
        last: dict[str, tuple[int, Draft]] = {}
        for at, piece in enumerate(self.row):
            if not self.is_free_change(piece) or "," not in (self.wrong(piece), self.right(piece)):
                continue
            if self.right(piece) != ",":
                self._comma_too_many(at, last)
                continue
            change = Change(self.wrong(piece), ",", piece.i0, piece.j0, self.s)
            verdict = next(v for rule in COMMAS if (v := rule(change)) is not None)
            draft = Draft(verdict.skill, verdict.sure)
            is_group = verdict.skill in _ONE_FOR_ALL or not verdict.sure
            if is_group and verdict.skill in last:
                before, known = last[verdict.skill]
                if self._same_group(before, at, verdict.skill):
                    draft = known
            piece.claim(draft)
            last[verdict.skill] = (at, draft)
            following = self._next_word(at)
            if self.wrong(piece) not in END_MARKS or following is None:
                continue
            if self.capital_differs(self.row[following]):
                self.row[following].claim(draft, "capital")

    def _same_group(self, before: int, at: int, skill: str) -> bool:
        between = self.row[before + 1 : at]
        if any(self.right(piece) in END_MARKS | {";", ":"} for piece in between):
            return False
        if any(self.s.word(p.j0) is not None and self._has_subject(p) for p in between):
            return False
        return len(between) <= (8 if skill == "comma-list" else 3)

    def _has_subject(self, piece: Piece) -> bool:
        word = self.s.word(piece.j0)
        return piece.j1 > piece.j0 and word is not None and word.dep_ in ("nsubj", "nsubjpass")

    def _comma_too_many(self, at: int, last: dict[str, tuple[int, Draft]]) -> None:
        piece = self.row[at]
        for place, known in last.values():
            # "jumped and, played": the comma stands on the wrong side of its word.
            if at - place == 2 and self.is_left_out_at(place):
                piece.claim(known)
                return
        if self.right(piece) not in ("", ";", ":", "-", "--"):
            return
        before, after = self.s.f_key(piece.i0 - 1), self.s.f_key(piece.i0 + 1)
        skill = "comma-list"
        joins = self.s.clause_behind(piece.j0) and self.s.clause_ahead(piece.j0 + 1)
        if after in JOINERS and joins:
            skill = "comma-join"
        elif before[:1].isdigit() or after[:1].isdigit():
            skill = "comma-date"
        piece.claim(Draft(skill, sure=False))
