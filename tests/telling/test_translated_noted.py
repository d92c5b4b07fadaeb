"""What was noted of places, told in Spanish as in English."""

from __future__ import annotations

import pytest

from tests.telling.told_once import ToldOnce


@pytest.fixture(scope="module")
def told(told_of_open: ToldOnce) -> dict[str, str]:
    found = told_of_open["public-es"]
    return {subject.id: narrative.text for subject, narrative in found.items()}


@pytest.mark.parametrize(
    ("id", "says"),
    [
        ("C08", "las lombrices habían removido esta tierra"),
        ("C16", "un arado había alcanzado esta tierra"),
        ("C21", "Un arado había removido antes esta tierra."),
        ("C04", "C05 es nuestra clave para otra parte del mismo hoyo de almacenamiento."),
        ("C05", "C04 es nuestra clave para otra parte del mismo hoyo de almacenamiento."),
        ("C16", "Alguna semilla de quenopodio tenía la cubierta gruesa"),
        ("late", "En el basurero C16, alguna semilla de quenopodio tenía la cubierta gruesa"),
        ("C17", "Parte de la madera había sido de un edificio."),
        ("late", "parte de la que hallamos en el edificio quemado C17 había sido de un edificio"),
    ],
)
def test_what_bears_on_the_counts_is_told_in_spanish(told: dict[str, str], id: str, says: str):
    """Worms, ploughs, fills of one pit, wild kin among the crop and timber stand in the records of these places."""
    assert says in told[id]


def test_what_says_that_soil_was_stirred_is_told_once(told: dict[str, str]):
    """C20 is told as stirred, and its drain and its burrows say no more than that."""
    assert told["C20"].count("removi") == 1 and "túneles" not in told["C20"]


def test_places_firmer_than_their_hamlet_are_named(told: dict[str, str]):
    """The hearth C11 has the firmest reading of the dig, and the smoke pit C13 a firmer one than the Late hamlet."""
    assert "El fogón C11 da de ello las mejores señales. El hoyo de humo C13 da buenas señales de ello." in told["late"]
    assert "En el fogón C11 " in told["site"].split("## La comida")[0]


def test_a_doubt_and_a_gloss_share_no_brackets(told: dict[str, str]):
    """Two things of unlike kinds in one bracket are read as one."""
    assert "cuatro (quizá seis) granos y trozos de grano de *Phalaris caroliniana* (hierba" in told["C02"]
