-- The content of a job is long and lies before what orders the board: the board's question is
-- answered by its index alone, and so is what was used for a job.

CREATE INDEX job_of_the_board ON job (state, changed_at, created_at, id, version);

DROP INDEX job_by_state_and_change;

CREATE INDEX movement_by_job ON movement (job, position);
