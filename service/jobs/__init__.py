"""Long work that outlives the process: asked for in a transaction, done once, told as it goes.

What is asked for is a row of the store. DBOS keeps the line of those that wait and finds again what
a process left behind; whether a task is open, done or cancelled is said by its row alone, and the
row is finished in the transaction that keeps what the work made.
"""
