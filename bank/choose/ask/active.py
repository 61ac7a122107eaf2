"""What is done *by* someone becomes what someone does: *Who was the milk spilled by?*

Runs before the parse on the lower-case text, so that both voices give the same ideas in the same roles.
"""

from __future__ import annotations

import re

from bank.choose.ask.forms import OF_AUX, as_object, as_subject, do_of, participle_of, verb_form

_WH = r"(?:who|whom|what|(?:what|which|whose) [\w'-]+(?: [\w'-]+){0,3}?|how (?:many|much)(?: [\w'-]+){1,2}?)"
_BE = r"(?:is|are|was|were)"
# A time, a place or a reason that follows may stand at the end of either wording.
_TAIL = (
    r"(?P<tail>(?: (?:last|this|next|every|yesterday|today|tomorrow|at|in|on|when|while|after|before|"
    r"because|during|if)\b.*)?)$"
)
# "By" some things names a place, a time or a means: nobody does it.
_NOT_BY = (
    r"(?!(?:the |a |your )?(?:door|window|road|street|lake|sea|river|side|way|end|bus|car|train|plane|"
    r"boat|bike|bicycle|foot|hand|hands|mail|phone|heart|name|mistake|accident|now|then|noon|night|"
    r"yourself|yourselves|myself|himself|herself|itself|themselves|who|whom|which|what)\b)"
)
_ASKED = re.compile(  # What was eaten by the mouse? What was the boy given by his teacher?
    rf"^(?P<wh>{_WH}|when|where|why|how) (?P<be>{_BE}) (?P<what>.+?) by {_NOT_BY}"
    rf"(?P<doer>.+?){_TAIL}"
)
_DOER_ASKED = re.compile(  # Who was the milk spilled by? By whom was the milk spilled?
    rf"^(?:(?P<wh>{_WH}) (?P<be>{_BE}) (?P<what>.+?) by"
    rf"|by (?P<wh2>{_WH}) (?P<be2>{_BE}) (?P<what2>.+?)){_TAIL}"
)
_DOER_LAST = re.compile(  # Broken cars are repaired by which worker?
    rf"^(?P<whom>(?!wh|how\b).+?) (?P<be>{_BE}) (?P<what>.+?) "
    rf"by (?P<wh>who|whom|what|(?:what|which) [\w'-]+(?: [\w'-]+)?){_TAIL}"
)
_YES_NO = re.compile(  # Was the milk spilled by the cat? Has it been spilled by the cat?
    rf"^(?:(?P<be>{_BE})|has|have|had) (?P<what>.+?) by {_NOT_BY}(?P<doer>.+?){_TAIL}"
)
_ALLOWED = re.compile(  # In what ways can a ball be used? What can be made from milk?
    r"^(?P<q>(?:(?:what|which|who|when|where|why|how)\b(?: [\w'-]+){0,2}? )?)"
    r"(?P<modal>can|could|should|must|may|will|would)(?P<whom>(?: (?!(?:be|rather)\b)[\w'-]+){0,5}?) "
    r"be (?P<verb>[\w-]+)(?P<rest>.*)$"
)
# What anyone does with a thing: How is bread made?
_ANYONE_DOES = frozenset(
    "made played done grown used spelled written cooked baked built washed cleaned fixed planted "
    "mailed sold kept said sung drawn painted fed caught eaten worn measured".split()
)
_HOW_DONE = re.compile(
    r"^(?P<q>how|where|when|why) (?:is|are) (?P<whom>(?!you\b|it\b).+?) "
    rf"(?P<verb>{'|'.join(sorted(_ANYONE_DOES))})(?P<rest>(?: [\w'-]+){{0,5}})$"
)
_COVERED = re.compile(  # What are the bodies of birds covered with?
    rf"^(?P<wh>what) (?P<be>{_BE}) (?P<whom>.+?) (?P<verb>covered|filled) (?:with|by|in|of)$"
)


def in_active_voice(plain: str) -> str:
    """`plain` (lower case, no end mark) with the doer as its subject, where one is named.

    >>> in_active_voice("what was eaten by the mouse")
    'what did the mouse eat'
    >>> in_active_voice("what was the boy given by his teacher")
    'what did his teacher give the boy'
    >>> in_active_voice("cars are repaired by which worker")
    'which worker repairs cars'
    """
    if " by" not in plain and not plain.startswith("by "):
        return _by_anyone(plain) if re.search(r"\b(?:be|is|are|was|were)\b", plain) else plain
    for pattern, turn in (
        (_DOER_ASKED, _asks_for_doer),
        (_DOER_LAST, _asks_for_doer),
        (_ASKED, _done),
        (_YES_NO, _done),
    ):
        found = pattern.match(plain)
        new = turn(found) if found else ""
        if new:
            return " ".join(new.split())
    return plain


def _asks_for_doer(found: re.Match[str]) -> str:
    part = _parts(found)
    whom, verb, rest = _around_participle(part["what"])
    whom = f"{part.get('whom', '')} {whom}".strip()
    if not verb or not whom:
        return ""
    who = "who" if part["wh"] == "whom" else part["wh"]
    does = verb_form(verb, "VBD" if part["be"] in ("was", "were") else "VBZ")
    return f"{who} {does} {as_object(whom)} {rest} {part['tail']}"


def _done(found: re.Match[str]) -> str:
    part = _parts(found)
    whom, verb, rest = _around_participle(part["what"])
    if not verb or " or " in found[0]:
        return ""
    doer = as_subject(part["doer"])
    aux = "did" if part.get("be", "was") in ("was", "were") else do_of(doer)
    return f"{part.get('wh', '')} {aux} {doer} {verb} {as_object(whom)} {rest} {part['tail']}"


def _parts(found: re.Match[str]) -> dict[str, str]:
    return {name.rstrip("2"): text for name, text in found.groupdict().items() if text is not None}


def _around_participle(said: str) -> tuple[str, str, str]:
    """To whom it is done, the verb ("" where there is none), and what else is said of it."""
    words = said.split()
    for at in range(len(words) - 1, -1, -1):
        verb = participle_of(words[at])
        if verb and {"not", "being", "the", "a"}.isdisjoint(words[max(0, at - 1) : at]):
            whom = [word for word in words[:at] if word != "been"]
            return " ".join(whom), verb, " ".join(words[at + 1 :])
    return "", "", ""


def _by_anyone(plain: str) -> str:
    covered = _COVERED.match(plain)
    if covered:
        tag = OF_AUX.get(covered["be"], "VBZ")
        return f"what {verb_form(covered['verb'][:-2], tag)} {covered['whom']}"
    found = _ALLOWED.match(plain)
    if found and participle_of(found["verb"]) and found["q"].strip() != "who":
        whom, aux = found["whom"].strip(), found["modal"]
    else:
        found = _HOW_DONE.match(plain)
        if not found:
            return plain
        whom, aux = found["whom"], "do"
    verb = participle_of(found["verb"])
    return " ".join(f"{found['q']} {aux} you {verb} {whom} {found['rest']}".split())
