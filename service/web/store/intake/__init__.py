"""What is brought to the store over HTTP: records and photos; and long work, how far it is."""
