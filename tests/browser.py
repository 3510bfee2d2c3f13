"""Where the tests' browser is: Playwright's own where it can be had, else the system's Chromium."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from playwright.sync_api import BrowserType, sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome")
QUIET = (
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
UNASKED = {"DEBIAN_FRONTEND": "noninteractive"}


def flags() -> list[str]:
    """Return the words a headless Chromium is started with; root has no sandbox of its own."""
    return [*QUIET, "--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else list(QUIET)


def executable(chromium: BrowserType) -> str | None:
    """Return the path of a Chromium, or None where there is none."""
    own = chromium.executable_path
    return own if Path(own).exists() else next((path for name in NAMES if (path := shutil.which(name))), None)


def found() -> bool:
    """Say whether there is a Chromium."""
    with sync_playwright() as playwright:
        return executable(playwright.chromium) is not None


def install() -> None:
    """Make sure that a Chromium is here, by whichever way works on this machine."""
    if found():
        return
    subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=False)
    if not found() and shutil.which("apt-get"):
        subprocess.run(["apt-get", "update"], check=False)
        subprocess.run(["apt-get", "install", "-y", "chromium"], check=False, env=os.environ | UNASKED)
    if not found():
        sys.exit("The tests need Chromium: install it with the system's package manager, then run this again.")
