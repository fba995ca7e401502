"""Who may use the store: users, sessions, tokens, pairings, each secret kept as a hash."""
