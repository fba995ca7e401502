"""What one does with a store: take records in, pack, print, attach, compare, find, keep safe.

Takes the store, the folder of files and the workshop, together the desk; each file holds one act
and answers with plain values. Knows no SQL, no HTTP and no terminal, and never reads a clock: who
acts and when is handed in.
"""
