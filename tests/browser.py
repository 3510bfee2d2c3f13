"""Where the tests' browser is: Playwright's own where it can be had, else the system's Chromium."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome")
QUIET = (
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-gpu",
    "--disable-sync",
    "--no-first-run",
)


def arguments() -> list[str]:
    """Return the words a headless Chromium is started with; root has no sandbox of its own."""
    return [*QUIET, "--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else list(QUIET)


def executable() -> str | None:
    """Return the path of a Chromium, or None where there is none."""
    own = _playwrights_own()
    found = next((path for name in NAMES if (path := shutil.which(name))), None)
    return own or found


def _playwrights_own() -> str | None:
    with sync_playwright() as playwright:
        path = playwright.chromium.executable_path
    return path if Path(path).exists() else None


def install() -> None:
    """Make sure that a Chromium is here, by whichever way works on this machine."""
    if executable():
        return
    own = subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=False)
    if own.returncode == 0 and executable():
        return
    if shutil.which("apt-get"):
        subprocess.run(["apt-get", "update"], check=False)
        subprocess.run(["apt-get", "install", "-y", "chromium"], check=False, env=os.environ | APT)
    if not executable():
        sys.exit("The tests need Chromium: install it with the system's package manager, then run this again.")


APT = {"DEBIAN_FRONTEND": "noninteractive"}
