-- A job that is off the board is found by its reference: answered by the index alone, as the long
-- content lies in the same row.

CREATE INDEX job_by_reference ON job (reference, created_at, id, version);
