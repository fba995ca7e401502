from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from service.render.task import ENVIRONMENT, FONTS_CONF

ROOT = Path(__file__).parents[2]


def test_environment_names_our_fonts() -> None:
    """A process that draws can choose the shipped fonts only, and stamps one constant time."""
    assert ENVIRONMENT["FONTCONFIG_FILE"] == str(FONTS_CONF)
    assert FONTS_CONF.is_file()
    assert ENVIRONMENT["SOURCE_DATE_EPOCH"].isdigit()


def test_engine_stays_out_of_the_parent() -> None:
    """The commands never import the engine, which would look for fonts of the system."""
    code = "import sys, service.cli.main; print('weasyprint' in sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout == "False\n"
