"""Why a printed card no longer says what the records say, and which cards to print again first."""
