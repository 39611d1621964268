"""Templates as an earlier build compiled them; the store is empty where the program, Python or a library is another one."""

from collections.abc import Mapping

from logbook.store.kept import sealed, unsealed
from logbook.store.store import Store

_SCHEMA = "CREATE TABLE IF NOT EXISTS template(name TEXT PRIMARY KEY, code BLOB)"


class StoredTemplates:
    """Remembers compiled templates."""

    def __init__(self, store: Store) -> None:
        """Begin with those that an earlier build left."""
        store.tables(_SCHEMA)
        self._store = store

    def kept(self) -> dict[str, bytes]:
        """Return them by name."""
        return {name: unsealed(code) for name, code in self._store.rows("SELECT name, code FROM template")}

    def keep(self, templates: Mapping[str, bytes]) -> None:
        """Keep more of them."""
        for name, code in templates.items():
            self._store.change("INSERT OR REPLACE INTO template VALUES (?, ?)", name, sealed(code))
