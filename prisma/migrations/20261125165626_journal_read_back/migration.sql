-- Reading an archive back: the tables' owner, and nobody else, may insert journal entries that bring their place, time and
-- hash along. Each is worked out again and must continue the club's chain, so what is read back is what was written, or
-- nothing is. An entry without a hash, and every entry of the service's role, is given its place as before.
CREATE OR REPLACE FUNCTION journal_entry_chain() RETURNS trigger
LANGUAGE plpgsql AS $$
DECLARE
  last record;
  read_back boolean := NEW.hash <> '' AND pg_has_role(current_user, (SELECT relowner FROM pg_class WHERE oid = TG_RELID), 'USAGE');
BEGIN
  -- One writer of a club's chain at a time, until its transaction ends.
  PERFORM pg_advisory_xact_lock(hashtextextended(NEW.club_id::text, 1));
  SELECT sequence, hash INTO last FROM journal_entry
    WHERE club_id = NEW.club_id ORDER BY sequence DESC LIMIT 1;
  IF NOT read_back THEN
    NEW.sequence := coalesce(last.sequence, 0) + 1;
    NEW.previous_hash := coalesce(last.hash, '');
    NEW.at := date_trunc('milliseconds', now());
    NEW.hash := journal_entry_hash(NEW);
  ELSIF NEW.sequence IS DISTINCT FROM coalesce(last.sequence, 0) + 1
     OR NEW.previous_hash IS DISTINCT FROM coalesce(last.hash, '')
     OR NEW.hash IS DISTINCT FROM journal_entry_hash(NEW) THEN
    RAISE EXCEPTION 'entry % does not continue the journal''s chain', NEW.sequence
      USING ERRCODE = 'integrity_constraint_violation';
  END IF;
  RETURN NEW;
END
$$;
COMMENT ON FUNCTION journal_entry_chain() IS
  'Gives a new journal entry its place, time and hash; of one read back by the tables'' owner, proves them.';
