"""Problems of a sheet, gathered by kind: a thousand dashes give one warning and not a thousand."""

from __future__ import annotations

from dataclasses import dataclass, field

from narrate.problems import Place, ProblemList

_NAMED = 6
"""Further places that a gathered problem names."""


@dataclass(slots=True)
class _Kind:
    severity: str
    code: str
    places: list[Place]
    message: str
    help: str


@dataclass(slots=True)
class Told:
    """Gathers problems while a sheet is read; `into` hands them over."""

    kinds: dict[tuple[str, str], _Kind] = field(default_factory=dict)
    times: int = 0
    """How often something was told, the same again among it."""

    def error(self, code: str, kind: str, place: Place, message: str, help: str = "") -> None:
        self._add("error", code, kind, place, message, help)

    def warning(self, code: str, kind: str, place: Place, message: str, help: str = "") -> None:
        self._add("warning", code, kind, place, message, help)

    def _add(self, severity: str, code: str, kind: str, place: Place, message: str, help: str) -> None:
        self.times += 1
        known = self.kinds.get((code, kind))
        if known is None:
            self.kinds[code, kind] = _Kind(severity, code, [place], message, help)
        elif place not in known.places[-1:]:
            known.places.append(place)

    def into(self, problems: ProblemList) -> None:
        for kind in self.kinds.values():
            others = kind.places[1:]
            message = kind.message
            if others:
                cells = [place.cell or str(place) for place in others[:_NAMED]]
                more = f" and {len(others) - _NAMED} more" if len(others) > _NAMED else ""
                message += f"; the same in {', '.join(cells)}{more}"
            add = problems.error if kind.severity == "error" else problems.warning
            add(kind.places[0], kind.code, message, help=kind.help)
