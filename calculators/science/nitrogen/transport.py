"""The one form of every sink of dissolved nitrogen."""


def limited_rate(pool: float, largest: float, half: float, turnover: float) -> float:
    """How fast a sink takes from the water: Monod or Michaelis-Menten, behind a limit of transport.

    Equation: rate = largest · pool / (half + pool + largest/turnover)
    pool and half in mg N of the whole tank, largest in mg N a day, turnover in tanks a day. However
    many leaves or bacteria there are, they cannot empty the tank faster than its water reaches them:
    the rate never passes turnover · pool. For a small sink the last term vanishes.
    """
    return largest * pool / (half + pool + largest / turnover)
