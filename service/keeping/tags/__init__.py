"""Tags of objects: what they would say now, and where their objects lie."""
