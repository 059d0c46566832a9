-- Documents whose words are not in finding yet: a write adds a row here, and many rows are filed
-- together later. `words` stand now, `gone` stood in finding and do no more.
CREATE TABLE unfiled (
  kind TEXT ${exact} NOT NULL,
  id TEXT ${exact} NOT NULL,
  words TEXT NOT NULL,
  gone TEXT NOT NULL,
  PRIMARY KEY (kind, id)
) ${clustered};

UPDATE store SET schema_version = 2;
