-- The board asks for what is not collected and what was collected lately, among years of jobs.

CREATE INDEX job_by_state_and_change ON job (state, changed_at);

DROP INDEX job_by_state;
