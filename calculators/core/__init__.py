"""What every calculator stands on: declaration, vocabulary, runner."""
