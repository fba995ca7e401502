"""The second languages: message catalogues in `templates/locale`, read into phrasebooks for cards.

The only package that knows Babel and the format of catalogues.
"""
