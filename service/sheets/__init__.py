"""Pages on sheets: stock by geometry, positions, marks.

Takes the sizes of pages and a stock; gives sheets on which each page has its rectangle to a
thousandth of a millimetre. Never looks at what a page says.
"""
