"""What changed between two states of a project, as one page that needs no other file and no script."""

from __future__ import annotations

import base64
import hashlib
import re
from pathlib import Path

from markupsafe import Markup

from narrate.model.changes import Changes
from narrate.web.templates import environment


def changes_page(changes: Changes, templates: Path, version: str) -> str:
    """
    The page for the team; nothing restricted was taken out, and it says so.

    The style sheet of the sites, without its pictures, stands in it; the policy lets in that style alone, by its hash.
    """
    sheet = (templates / "assets" / "site.css").read_text(encoding="utf-8")
    style = re.sub(r"url\([^)]*\)", "none", sheet).replace("</", "<\\/")
    digest = base64.b64encode(hashlib.sha256(style.encode("utf-8")).digest()).decode("ascii")
    template = environment(templates).get_template("changes.html")
    return template.render(changes=changes, style=Markup(style), digest=digest, version=version)
