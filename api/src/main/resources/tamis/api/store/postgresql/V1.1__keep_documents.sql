-- Keeps documents in one round trip and one transaction. Each row of the answer is for one of them:
-- KEPT with its number and revision, or why it was not (see Outcome). The row of store is written
-- first: from there on nobody else can write, and each statement below sees what others did before.
-- Lists of texts within an array are joined by line ends.
CREATE FUNCTION keep_documents(
  moment TEXT, of_documents INTEGER, of_trials INTEGER,
  kinds TEXT[], ids TEXT[], expected INTEGER[], seen INTEGER[], authors TEXT[], titles TEXT[],
  word_lists TEXT[], bodies TEXT[], reworded BOOLEAN[], gone TEXT[], added TEXT[], used TEXT[])
RETURNS TABLE (why TEXT, of_number INTEGER, at_revision BIGINT, about TEXT)
LANGUAGE plpgsql AS $$
#variable_conflict use_column
DECLARE
  last_document BIGINT;
  last_trial BIGINT;
  alive INTEGER;
  came INTEGER;
  refused BOOLEAN := FALSE;
BEGIN
  UPDATE store SET revision = revision + of_documents, trials = trials + of_trials
    RETURNING revision - of_documents, trials - of_trials INTO last_document, last_trial;
  FOR i IN 1 .. cardinality(ids) LOOP
    about := NULL;
    at_revision := 0;
    SELECT h.number, h.live INTO of_number, alive
      FROM head h WHERE h.kind = kinds[i] AND h.id = ids[i];
    of_number := COALESCE(of_number, 0);
    why := CASE
      WHEN expected[i] = 0 THEN CASE WHEN alive = 1 THEN 'EXISTS' ELSE 'KEPT' END
      WHEN alive IS DISTINCT FROM 1 THEN 'ABSENT'
      WHEN of_number <> expected[i] THEN 'STALE'
      ELSE 'KEPT' END;
    IF why = 'KEPT' AND seen[i] >= 0 THEN
      SELECT count(*) INTO came FROM observation o
        WHERE o.trial = ids[i] AND o.number = expected[i];
      IF came <> seen[i] THEN
        why := 'OBSERVED';
        of_number := came;
      END IF;
    END IF;
    IF why = 'KEPT' AND used[i] <> '' THEN
      SELECT u INTO about FROM unnest(string_to_array(used[i], E'\n')) u
        WHERE NOT EXISTS (
          SELECT 1 FROM head h WHERE h.kind = 'formula' AND h.id = u AND h.live = 1) LIMIT 1;
      IF FOUND THEN
        why := 'GONE';
      END IF;
    END IF;
    IF why = 'KEPT' THEN
      of_number := of_number + 1;
      IF of_number = 1 THEN
        INSERT INTO head (kind, id, number, live, title, words)
          VALUES (kinds[i], ids[i], 1, 1, titles[i], word_lists[i]);
      ELSE
        UPDATE head SET number = of_number, live = 1, title = titles[i], words = word_lists[i]
          WHERE kind = kinds[i] AND id = ids[i];
      END IF;
      IF kinds[i] = 'trial' THEN
        last_trial := last_trial + 1;
        at_revision := last_trial;
      ELSE
        last_document := last_document + 1;
        at_revision := last_document;
      END IF;
      INSERT INTO document (kind, id, number, revision, written, author, body)
        VALUES (kinds[i], ids[i], of_number, at_revision, moment, authors[i], bodies[i]);
      IF reworded[i] THEN
        INSERT INTO unfiled AS u (kind, id, words, gone)
          VALUES (kinds[i], ids[i], word_lists[i], gone[i])
          ON CONFLICT (kind, id) DO UPDATE
          SET words = excluded.words, gone = u.gone || excluded.gone;
      END IF;
      IF added[i] <> '' THEN
        INSERT INTO finding (kind, term, id)
          SELECT kinds[i], unnest(string_to_array(added[i], E'\n')), ids[i]
          ON CONFLICT DO NOTHING;
      END IF;
    ELSE
      refused := TRUE;
    END IF;
    RETURN NEXT;
  END LOOP;
  IF refused THEN -- what was not kept has no revision
    UPDATE store SET revision = last_document, trials = last_trial;
  END IF;
END
$$;
