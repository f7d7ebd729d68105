-- An answer is long and goes along with many changes: it lies here once, under the name of its
-- digest. What was written before this version keeps its answers within it.

CREATE TABLE answer (
  id TEXT PRIMARY KEY,
  text TEXT NOT NULL
);

-- Where a job stood after a change. Of the changes made before, those that tell it are filled in.

ALTER TABLE job_change ADD COLUMN state TEXT;

UPDATE job_change SET state = 'BOOKED' WHERE kind = 'ENTERED';
UPDATE job_change SET state = 'CURING' WHERE kind = 'CLOSED';
UPDATE job_change SET state = 'BOOKED' WHERE kind = 'STATE' AND words = 'booked';
UPDATE job_change SET state = 'WAITING_PARTS' WHERE kind = 'STATE' AND words = 'waiting parts';
UPDATE job_change SET state = 'IN_WORK' WHERE kind = 'STATE' AND words = 'in work';
UPDATE job_change SET state = 'CHECKED' WHERE kind = 'STATE' AND words = 'checked';
UPDATE job_change SET state = 'CUSTOMER_TOLD' WHERE kind = 'STATE' AND words = 'customer told';
UPDATE job_change SET state = 'COLLECTED' WHERE kind = 'STATE' AND words = 'collected';
