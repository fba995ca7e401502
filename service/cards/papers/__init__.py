"""What the papers of the round say: they lie about in the store, so they say what may be read."""
