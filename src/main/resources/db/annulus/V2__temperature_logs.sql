-- Temperature logs of closed joints as they were read out, with what was said about them. A job's
-- content names the one in force; rows are only ever added, so that an undo finds the one before.

CREATE TABLE temperature_log (
  id TEXT PRIMARY KEY,
  job TEXT NOT NULL REFERENCES job (id),
  name TEXT NOT NULL,
  text TEXT NOT NULL,
  date_order TEXT NOT NULL,
  unit TEXT NOT NULL,
  temperature_column TEXT NOT NULL,
  read_at TEXT NOT NULL
);

CREATE INDEX temperature_log_by_job ON temperature_log (job);
