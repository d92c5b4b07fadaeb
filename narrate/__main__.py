"""`python -m narrate` is the same as `narrate`."""

from __future__ import annotations

from narrate.cli import main

if __name__ == "__main__":
    main()
