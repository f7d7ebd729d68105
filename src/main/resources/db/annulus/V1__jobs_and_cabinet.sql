-- Jobs, their changes, the bores, drafts and the cabinet. The same on SQLite and PostgreSQL.
-- Times are ISO 8601 instants in UTC as text, so that both databases sort and show them alike.

CREATE TABLE job (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL,
  reference TEXT NOT NULL,
  state TEXT NOT NULL,
  content TEXT NOT NULL,
  created_at TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  changed_by TEXT NOT NULL
);

CREATE INDEX job_by_state ON job (state);

-- What was changed, by whom and when; rows are only ever added. An undo is a row of its own.
CREATE TABLE job_change (
  id ${serial},
  job TEXT NOT NULL REFERENCES job (id),
  version BIGINT NOT NULL,
  at TEXT NOT NULL,
  who TEXT NOT NULL,
  kind TEXT NOT NULL,
  words TEXT NOT NULL,
  before_content TEXT,
  after_content TEXT NOT NULL,
  undoes BIGINT REFERENCES job_change (id)
);

CREATE INDEX job_change_by_job ON job_change (job, id);

-- One row for each time a part was fitted in a named bore.
CREATE TABLE bore_fit (
  change_id BIGINT PRIMARY KEY REFERENCES job_change (id),
  bore TEXT NOT NULL,
  job TEXT NOT NULL REFERENCES job (id),
  at TEXT NOT NULL,
  mean_mm DOUBLE PRECISION NOT NULL,
  plus_minus_um DOUBLE PRECISION NOT NULL
);

CREATE INDEX bore_fit_by_bore ON bore_fit (bore);

CREATE TABLE draft (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL,
  content TEXT NOT NULL,
  changed_at TEXT NOT NULL,
  changed_by TEXT NOT NULL
);

CREATE TABLE lot (
  lot TEXT PRIMARY KEY,
  item TEXT NOT NULL,
  label TEXT NOT NULL,
  container_ul BIGINT NOT NULL,
  left_ul BIGINT NOT NULL,
  received TEXT,
  opened TEXT,
  expires TEXT,
  place TEXT NOT NULL,
  sheet_on_file INTEGER NOT NULL,
  sheet_dated TEXT,
  stored_low_c DOUBLE PRECISION,
  stored_high_c DOUBLE PRECISION
);

CREATE TABLE movement (
  position ${serial},
  id TEXT NOT NULL UNIQUE,
  at TEXT NOT NULL,
  day TEXT NOT NULL,
  kind TEXT NOT NULL,
  who TEXT NOT NULL,
  job TEXT NOT NULL,
  lot TEXT NOT NULL REFERENCES lot (lot),
  item TEXT NOT NULL,
  amount_ul BIGINT NOT NULL,
  reason TEXT NOT NULL,
  witness TEXT NOT NULL
);
