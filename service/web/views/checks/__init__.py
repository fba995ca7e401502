"""The round, on the phone: what is due, a look at one container, what pests ask for."""
