"""Damaged sheets and workbooks: a clear problem each, in bounded time and memory."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[3]
# Seconds of the processor: one thread does all of it, and other work on the machine is no fault of the sheet.
SCRIPT = """
import json, tempfile, time
from pathlib import Path
from narrate.reading.intake.take_in import take_in
from narrate.reading.intake.project_intake import naming_packs
from tests.reading.intake.damaged import damaged

packs = naming_packs(("eastern-north-america",))
folder = Path(tempfile.mkdtemp())
told = {}
slowest = 0.0
for name, ending, content in damaged():
    path = folder / f"lab{ending}"
    path.write_bytes(content)
    begun = time.process_time()
    told[name] = [[p.severity, p.code, p.message, p.help] for p in take_in(path, packs).problems]
    slowest = max(slowest, time.process_time() - begun)
    assert path.read_bytes() == content, name
# not getrusage: its peak is inherited from the process that started this one
peak = next(line for line in Path("/proc/self/status").read_text().splitlines() if line.startswith("VmHWM"))
memory = int(peak.split()[1]) // 1024
print(json.dumps({"told": told, "slowest": slowest, "memory": memory}))
"""


def test_two_hundred_damaged_files_are_told_and_bounded() -> None:
    """Each gives a problem that says what was expected; none takes a minute or a gigabyte; none is changed."""
    ran = subprocess.run([sys.executable, "-c", SCRIPT], capture_output=True, text=True, check=True, cwd=ROOT)
    found = json.loads(ran.stdout)
    told = found["told"]

    assert len(told) == 200
    assert [name for name, problems in told.items() if not problems] == []
    assert [p for problems in told.values() for p in problems if p[0] == "error" and "expected" not in p[2]][:5] == []
    assert found["slowest"] < 60
    assert found["memory"] < 1000
