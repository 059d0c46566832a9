-- When the newest revision over documents was written.
ALTER TABLE store ADD COLUMN written TEXT;
UPDATE store SET written = (
  SELECT d.written FROM document d WHERE d.kind <> 'trial' ORDER BY d.revision DESC LIMIT 1);

UPDATE store SET schema_version = 3;
