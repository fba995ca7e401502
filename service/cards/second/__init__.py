"""Words of handling in a second language, which stand after the English and never instead of it."""
