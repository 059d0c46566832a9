-- Keeps one document, in one round trip with its commit, and answers its revision. The row of store
-- is written first: from there on nobody else can write, and each statement below sees what others
-- did before. What cannot be kept fails and is undone as a whole, on the keys of document and head or
-- by a raised violation of the same class (23); why is looked up afterwards, since that is rare and
-- to look first takes longer than to write. Many are kept by one SELECT that calls this for each.
-- Several texts in one are joined by line ends. A title that is null leaves head as it is, gone words
-- that are null say that no word is another.
DROP FUNCTION keep_document;
ALTER TABLE store DROP COLUMN written_before;

CREATE FUNCTION keep_document(
  moment TEXT, of_kind TEXT, of_id TEXT, expected INTEGER, seen INTEGER, by_author TEXT,
  of_title TEXT, all_words TEXT, of_body TEXT, gone_words TEXT, added TEXT, used TEXT)
RETURNS BIGINT
LANGUAGE plpgsql AS $$
DECLARE
  at_revision BIGINT;
BEGIN
  IF of_kind = 'trial' THEN
    UPDATE store SET trials = trials + 1 RETURNING trials INTO at_revision;
  ELSE
    UPDATE store SET revision = revision + 1, written = moment RETURNING revision INTO at_revision;
  END IF;
  IF seen >= 0 THEN
    IF seen <> (SELECT count(*) FROM observation o WHERE o.trial = of_id AND o.number = expected)
    THEN
      RAISE integrity_constraint_violation;
    END IF;
  END IF;
  IF used <> '' THEN
    IF EXISTS (SELECT FROM unnest(string_to_array(used, E'\n')) u
        WHERE NOT EXISTS (SELECT FROM head h WHERE h.kind = 'formula' AND h.id = u))
    THEN
      RAISE integrity_constraint_violation;
    END IF;
  END IF;
  INSERT INTO document (kind, id, number, revision, written, author, body)
    VALUES (of_kind, of_id, expected + 1, at_revision, moment, by_author, of_body);
  IF expected = 0 THEN
    INSERT INTO head (kind, id, title, words) VALUES (of_kind, of_id, of_title, all_words);
  ELSIF of_title IS NOT NULL THEN
    UPDATE head SET title = of_title, words = all_words WHERE kind = of_kind AND id = of_id;
    IF NOT FOUND THEN -- it was deleted before
      INSERT INTO head (kind, id, title, words) VALUES (of_kind, of_id, of_title, all_words);
    END IF;
  END IF;
  IF gone_words IS NOT NULL THEN
    INSERT INTO unfiled (kind, id, gone) VALUES (of_kind, of_id, gone_words);
  END IF;
  IF added <> '' THEN
    INSERT INTO finding (kind, term, id)
      SELECT of_kind, unnest(string_to_array(added, E'\n')), of_id ON CONFLICT DO NOTHING;
  END IF;
  RETURN at_revision;
END
$$;
