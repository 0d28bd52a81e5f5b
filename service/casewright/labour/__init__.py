"""Operations, time standards and how they learn, batches, waits and the promise date."""
