"""Puts files that are made from records into a folder that holds files of ours too."""

from collections.abc import Mapping

from scripts.setup.file_hash import Octets
from scripts.setup.kept import octets_at, thrown_away
from scripts.setup.new_folder import NewFolder


def put_generated(folder: NewFolder, name: str, octets: Octets) -> str:
    """Write a file that is not there; its name. Raises ``FileExistsError`` where it is."""
    try:
        folder.put(name, octets)
        return name
    except FileExistsError:
        raise FileExistsError(
            f"{name} is generated, and stands in docs/ too; rename it there"
        ) from None


def put_kept(folder: NewFolder, places: Mapping[str, str]) -> None:
    """Write files as they are kept, each at its place.

    Raises as ``put_generated``, and ``Missing`` where one is kept no longer.
    """
    for name, place in places.items():
        octets = octets_at(place)
        if octets is None:
            thrown_away()
        put_generated(folder, name, octets)
