-- The number stands in document alone, so that a new revision with the old title and words writes
-- nothing here; what was deleted has no row.
DELETE FROM head WHERE live = 0;
ALTER TABLE head DROP COLUMN live;
ALTER TABLE head DROP COLUMN number;

-- A row for each write that changed words, in no order and without a key: the cheapest thing to
-- write. The words themselves stand in head; `gone` stood in finding and do no more.
ALTER TABLE unfiled RENAME TO unfiled_before;
CREATE TABLE unfiled (
  kind TEXT ${exact} NOT NULL,
  id TEXT ${exact} NOT NULL,
  gone TEXT NOT NULL
);
INSERT INTO unfiled (kind, id, gone) SELECT kind, id, gone FROM unfiled_before;
DROP TABLE unfiled_before;

UPDATE store SET schema_version = 4;
