-- ${exact} makes a database compare texts by their bytes; ${clustered} keeps rows in their key.

CREATE TABLE store (
  only_row INTEGER NOT NULL PRIMARY KEY CHECK (only_row = 1),
  schema_version INTEGER NOT NULL,
  revision BIGINT NOT NULL,
  trials BIGINT NOT NULL
);
INSERT INTO store VALUES (1, 1, 0, 0);

-- Every revision of every document; a deletion has no body. Rows are added, never changed.
CREATE TABLE document (
  kind TEXT ${exact} NOT NULL,
  id TEXT ${exact} NOT NULL,
  number INTEGER NOT NULL,
  revision BIGINT NOT NULL,
  written TEXT NOT NULL,
  author TEXT NOT NULL,
  body TEXT,
  PRIMARY KEY (kind, id, number)
);

-- The newest revision of each document, for lists and searches.
CREATE TABLE head (
  kind TEXT ${exact} NOT NULL,
  id TEXT ${exact} NOT NULL,
  number INTEGER NOT NULL,
  live INTEGER NOT NULL,
  title TEXT NOT NULL,
  words TEXT NOT NULL,
  PRIMARY KEY (kind, id)
) ${clustered};

-- Where a word (w:) stands now; where a name (n:) or the id of a used formula (u:) stood ever.
CREATE TABLE finding (
  kind TEXT ${exact} NOT NULL,
  term TEXT ${exact} NOT NULL,
  id TEXT ${exact} NOT NULL,
  PRIMARY KEY (kind, term, id)
) ${clustered};

-- What came to revision `number` of a trial after that was written. Rows are added, never changed.
CREATE TABLE observation (
  trial TEXT ${exact} NOT NULL,
  number INTEGER NOT NULL,
  id TEXT ${exact} NOT NULL,
  revision BIGINT NOT NULL,
  written TEXT NOT NULL,
  author TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (trial, number, id)
);
