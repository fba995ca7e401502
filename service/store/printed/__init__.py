"""Every card ever printed, and which of them are on their containers now."""
