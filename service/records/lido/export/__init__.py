"""Object records to LIDO 1.1: what `service/records/lido` reads back as it was.

Gives bytes; nothing here writes to a disk.
"""
