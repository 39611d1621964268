"""A table of names: in order, never changed, and a mapping like any other."""

from logbook.model.named import ByName

PAIRS = [("cod", 3), ("ling", 1), ("haddock", 2)]


def test_it_answers_as_a_dict_of_the_same_pairs() -> None:
    table, known = ByName(PAIRS), dict(PAIRS)

    assert [*table] == [*table.keys()] == [*known]
    assert [*table.items()] == PAIRS
    assert [*table.values()] == [3, 1, 2]
    assert [name in table for name in ("ling", "saithe")] == [True, False]
    assert [table.get("ling"), table.get("saithe"), table.get("saithe", 0)] == [1, None, 0]
    assert table == known
    assert len(table) == len(known)
    assert not ByName()


def test_tables_of_the_same_pairs_are_equal_whatever_their_order() -> None:
    assert ByName(PAIRS) == ByName(reversed(PAIRS))
    assert hash(ByName(PAIRS)) == hash(ByName(reversed(PAIRS)))
    assert ByName(PAIRS) != ByName(PAIRS[:2])
