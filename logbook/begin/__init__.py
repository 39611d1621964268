"""What a new log, a new fleet file and an editor's knowledge of both begin with; nothing here is read back."""
