-- Keeps one document, in one round trip with its commit. The answer is KEPT with its number and
-- revision, or why it was not (see Outcome). The row of store is written first: from there on nobody
-- else can write, and each statement below sees what others did before. A document at a time, since
-- to take arrays apart takes longer than to write; many are kept by one SELECT that calls this for
-- each. Several texts in one are joined by line ends.
DROP FUNCTION keep_documents;

-- What a refused write gives back.
ALTER TABLE store ADD COLUMN written_before TEXT;

CREATE FUNCTION keep_document(
  moment TEXT, of_kind TEXT, of_id TEXT, expected INTEGER, seen INTEGER, by_author TEXT,
  of_title TEXT, all_words TEXT, of_body TEXT, reworded BOOLEAN, gone_words TEXT, added TEXT,
  used TEXT,
  OUT why TEXT, OUT of_number INTEGER, OUT at_revision BIGINT, OUT about TEXT)
LANGUAGE plpgsql AS $$
DECLARE
  is_trial BOOLEAN := of_kind = 'trial';
  came INTEGER := seen;
  alive INTEGER;
BEGIN
  IF is_trial THEN
    UPDATE store SET trials = trials + 1 RETURNING trials INTO at_revision;
  ELSE
    UPDATE store SET revision = revision + 1, written = moment, written_before = written
      RETURNING revision INTO at_revision;
  END IF;
  IF seen >= 0 THEN
    SELECT count(*) INTO came FROM observation o WHERE o.trial = of_id AND o.number = expected;
  END IF;
  IF used <> '' THEN
    SELECT u INTO about FROM unnest(string_to_array(used, E'\n')) u
      WHERE NOT EXISTS (
        SELECT 1 FROM head h WHERE h.kind = 'formula' AND h.id = u AND h.live = 1) LIMIT 1;
  END IF;
  IF about IS NULL AND came = seen THEN
    IF expected = 0 THEN
      INSERT INTO head AS h (kind, id, number, live, title, words)
        VALUES (of_kind, of_id, 1, 1, of_title, all_words)
        ON CONFLICT (kind, id) DO UPDATE
        SET number = h.number + 1, live = 1, title = excluded.title, words = excluded.words
        WHERE h.live = 0
        RETURNING h.number INTO of_number;
    ELSE
      UPDATE head h SET number = h.number + 1, title = of_title, words = all_words
        WHERE h.kind = of_kind AND h.id = of_id AND h.number = expected AND h.live = 1
        RETURNING h.number INTO of_number;
    END IF;
  END IF;
  IF of_number IS NULL THEN -- what is not kept has no revision
    UPDATE store SET
      trials = trials - CASE WHEN is_trial THEN 1 ELSE 0 END,
      revision = revision - CASE WHEN is_trial THEN 0 ELSE 1 END,
      written = CASE WHEN is_trial THEN written ELSE written_before END;
    SELECT h.number, h.live INTO of_number, alive
      FROM head h WHERE h.kind = of_kind AND h.id = of_id;
    why := CASE
      WHEN expected = 0 AND alive = 1 THEN 'EXISTS'
      WHEN expected <> 0 AND alive IS DISTINCT FROM 1 THEN 'ABSENT'
      WHEN expected <> 0 AND of_number <> expected THEN 'STALE'
      WHEN came <> seen THEN 'OBSERVED'
      ELSE 'GONE' END;
    of_number := CASE WHEN why = 'OBSERVED' THEN came ELSE COALESCE(of_number, 0) END;
    RETURN;
  END IF;
  INSERT INTO document (kind, id, number, revision, written, author, body)
    VALUES (of_kind, of_id, of_number, at_revision, moment, by_author, of_body);
  IF reworded THEN
    INSERT INTO unfiled AS u (kind, id, words, gone)
      VALUES (of_kind, of_id, all_words, gone_words)
      ON CONFLICT (kind, id) DO UPDATE
      SET words = excluded.words, gone = u.gone || excluded.gone;
  END IF;
  IF added <> '' THEN
    INSERT INTO finding (kind, term, id)
      SELECT of_kind, unnest(string_to_array(added, E'\n')), of_id ON CONFLICT DO NOTHING;
  END IF;
  why := 'KEPT';
END
$$;
