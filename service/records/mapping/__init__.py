"""How one museum's own headings become our fields: a value, its checks, and how it is applied."""
