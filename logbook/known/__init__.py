"""What a logs folder tells, read where it has changed and known from an earlier build where it has not."""

from logbook.known.reading import Reading, read_and_reckon
from logbook.known.task import Task, reckoned

__all__ = ["Reading", "Task", "read_and_reckon", "reckoned"]
