"""The API of the store: what is kept, packed, printed and attached, over HTTP."""
