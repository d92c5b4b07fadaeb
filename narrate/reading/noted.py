"""Fields of word packs for what people note in words and for what other digs published."""

from __future__ import annotations

from narrate.model.observations import NOTED_OF, TOLD_WITH
from narrate.model.plants import KNOWN
from narrate.reading.asking import Field
from narrate.reading.criteria import selector
from narrate.reading.fields import list_of, mapping_of
from narrate.reading.pack_files import SOURCES
from narrate.reading.values import id_text, number, one_of, text

_STATEMENTS = Field(reads=list_of(id_text("the id of a statement"), one_is_a_list=True))
_KNOWN = Field(reads=one_of(KNOWN))


def observation_fields() -> dict[str, Field]:
    return {
        "id": Field(reads=text("a name", may_be_empty=False), is_needed=True),
        "noted_of": Field(reads=one_of(NOTED_OF), is_needed=True),
        "phrases": Field(reads=list_of(text("words", may_be_empty=False), one_is_a_list=True), is_needed=True),
        "of": Field(reads=selector()),
        "agrees_with": _STATEMENTS,
        "not_against": _STATEMENTS,
        "against": _STATEMENTS,
        "told_with": Field(reads=one_of(TOLD_WITH)),
        "means": Field(reads=text()),
        "plain": Field(reads=text()),
        "wanting": Field(reads=text()),
        "known": _KNOWN,
        "sources": SOURCES,
    }


def elsewhere_fields() -> dict[str, Field]:
    return {
        "id": Field(reads=text("a name", may_be_empty=False), is_needed=True),
        "name": Field(reads=text("a name", may_be_empty=False), is_needed=True),
        "of": Field(reads=selector(), is_needed=True),
        "where": Field(reads=text("a place", may_be_empty=False), is_needed=True),
        "sites": Field(reads=mapping_of(number(at_least=0, at_most=1)), is_needed=True),
        "regions": Field(reads=list_of(id_text("a region pack"), one_is_a_list=True)),
        "known": _KNOWN,
        "sources": SOURCES,
    }
