"""`python3 -m service`: the first file read, so it parses on Pythons that are too old to go on."""

import sys

if sys.version_info < (3, 11):
    sys.exit(
        "Underlid needs Python 3.11 or newer; this one is %d.%d. On Debian or Ubuntu: "
        "apt-get install python3. Elsewhere: install it from your system's packages, then start "
        "again with that Python." % sys.version_info[:2]
    )

from service.bootstrap.start import main

sys.exit(main(sys.argv[1:]))
