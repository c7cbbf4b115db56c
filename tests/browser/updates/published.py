"""Versions of a book that a server puts out, and what a reader's device makes of them."""

import itertools
import os
import re
import shutil
import time

from playwright.sync_api import expect

from scripts.setup.paths import ROOT
from scripts.site.offline import write_offline_list

LATER = itertools.count(2, 2)  # seconds


def list_anew(folder):
    """The list and the worker of the files that stand there; the version."""
    shutil.copyfile(ROOT / "docs" / "service-worker.js", folder / "service-worker.js")
    return write_offline_list(folder)


def publish(folder, *, spoil=None, words="plants, freshly printed, by the way"):
    """Change the plants' page and publish; ``spoil`` names a file that arrives damaged."""
    page = folder / "plants" / "index.html"
    text = re.sub(r"plants, (?:[\w ]+, )?by the way", words, page.read_text(encoding="utf-8"))
    page.write_text(text, encoding="utf-8")
    version = list_anew(folder)
    if spoil:
        with (folder / spoil).open("ab") as file:
            file.write(b" ")
    printed_later(folder, page)
    return version


def printed_later(folder, page):
    """Date what was published apart: a server tells times by the second, and two may share one."""
    stamp = time.time() + next(LATER)
    for path in (page, *folder.glob("*.js*"), *folder.glob("assets/*.json")):
        os.utime(path, (stamp, stamp))


def look_again(page):
    """Look for a new version, until it is installed or given up."""
    page.evaluate(
        """async () => {
        const registration = await navigator.serviceWorker.ready;
        await registration.update().catch(() => {});
        const worker = registration.installing;
        if (!worker) return;
        await new Promise((done) => {
          const look = () => worker.state === "installing" || done();
          worker.addEventListener("statechange", look);
          look();
        }); }"""
    )


def reads_with_no_network(page):
    """A page of the copy opens while nothing can be fetched; the network stays off."""
    page.context.set_offline(True)
    page.goto("plants/lemna-minor/")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Lemna minor")
