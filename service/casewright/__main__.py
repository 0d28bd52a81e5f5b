"""`python -m casewright`: the command line."""

import sys

from casewright.cli import main

sys.exit(main())
