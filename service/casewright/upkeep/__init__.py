"""Looking after the service: backup and restore, export, the doctor, people without the web."""
