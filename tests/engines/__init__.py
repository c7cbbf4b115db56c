"""Other engines than the browser tests' own; what their steps assert is told in full."""

import pytest

pytest.register_assert_rewrite("tests.engines.core_path", "tests.engines.drivers")
