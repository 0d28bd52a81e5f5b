"""What people do, as verbs on a session: take on a job, revise, quote, advance a drawer, log time."""
