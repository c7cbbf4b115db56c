"""Writes the open data into the site's source: its files, then the package that describes them."""

from functools import partial

from scripts.pages.open_data.data_files import PACKAGE, RESOURCES, open_data_makers, package_text
from scripts.pages.write_made import write_made
from scripts.records.kept_files import KeptFiles
from scripts.records.kept_pieces import KeptPieces
from scripts.setup.generated_files import put_generated
from scripts.setup.new_folder import NewFolder


def write_open_data(known: KeptFiles, source: NewFolder) -> None:
    """Write all of the open data.

    ``known`` has the records and what is kept of the files. Raises ``FileExistsError`` as
    ``put_generated``.
    """

    def put(name: str, octets: bytes) -> bytes:
        """Write a file; of a resource its description, of any other nothing."""
        if name not in RESOURCES:
            put_generated(source, name, octets)
            return b""
        end = octets.rindex(b"\n")
        put_generated(source, name, memoryview(octets)[:end])  # no copy: these are megabytes
        return octets[end + 1 :]

    abouts = write_made(known, open_data_makers(known.library, partial(KeptPieces, known)), put)
    package = package_text([abouts[name] for name in RESOURCES])
    put_generated(source, PACKAGE, package.encode())
