"""The site by the successor of our site builder, written by the authors of the base theme.

No build uses it yet; ``DEVELOPERS.md`` says when we move. Both read the same source, settings and
templates, but for one thing: an address in raw HTML counts from the page's address for the builder that
we have, and from the page's file for its successor.
"""

import posixpath
import re
import shutil
import subprocess
from collections.abc import Iterable
from pathlib import Path
from urllib.parse import urlsplit

from scripts.setup.environment import make
from scripts.setup.paths import BUILD, ROOT, python_of
from scripts.site.addresses import address_of, relative

ENVIRONMENT = BUILD / "successor-environment"
SETTINGS = "mkdocs.yml"
NOT_READ = re.compile(r"(<noscript>.*?</noscript>)", re.DOTALL)  # stays as it is in both
RAW_LINK = re.compile(r'(<a\b[^>]*?\shref=")([^"]+)(")')
STUB = "---\ntitle: Left out\n---\n# Left out\n"  # so that links to the page still find its file


class SuccessorFailed(Exception):
    """The successor refused; its words are the message."""


def make_successor() -> None:
    """Install it into an environment of its own. Raises ``Missing`` where that cannot be."""
    make(ENVIRONMENT, ("successor",))


def build_with_successor(source: Path, project: Path, pages: Iterable[str]) -> Path:
    """Build some pages of the source in a folder of their own; the folder of the site that was made.

    Every page of the source gets its file, but those that ``pages`` does not name an empty one. Raises
    ``SuccessorFailed`` with its output.
    """
    chosen = set(pages)
    shutil.copy(ROOT / SETTINGS, project)
    shutil.copytree(ROOT / "docs" / "theme", project / "docs" / "theme")
    for path in source.rglob("*.md"):
        name = path.relative_to(source).as_posix()
        text = for_successor(name, path.read_text(encoding="utf-8")) if name in chosen else STUB
        target = project / "build" / "docs" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8")
    command = [str(python_of(ENVIRONMENT)), "-m", "zensical", "build", "-f", SETTINGS]
    done = subprocess.run(command, cwd=project, capture_output=True, text=True)
    if done.returncode:
        raise SuccessorFailed(f"{done.stdout}{done.stderr}".strip())
    return project / "site"


def for_successor(name: str, text: str) -> str:
    """A page of the source whose links in raw HTML count from its file."""
    folder = posixpath.dirname(name)
    here = f"{folder}/" if folder else ""

    def counted(found: re.Match[str]) -> str:
        parts = urlsplit(found[2])
        if parts.scheme or parts.netloc or not parts.path or parts.path.startswith("/"):
            return found[0]
        target = posixpath.normpath(posixpath.join(address_of(name), parts.path))
        link = relative(f"{target}/" if parts.path.endswith("/") else target, here)
        return found[1] + parts._replace(path=link).geturl() + found[3]

    texts = NOT_READ.split(text)
    texts[::2] = [RAW_LINK.sub(counted, one) for one in texts[::2]]
    return "".join(texts)
