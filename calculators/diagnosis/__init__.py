"""What ``diagnose`` and the drawing of the tank share: causes, evidence, ranking, the next question."""
