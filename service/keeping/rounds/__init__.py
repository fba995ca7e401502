"""The round through a store: what is due, what pests ask for, and the papers to walk with."""
