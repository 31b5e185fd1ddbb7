-- Whether anybody has a text at all: a word that is common is found at once, where `cars_with` would read every car that has it.
CREATE FUNCTION somebody_has(pattern text, keepers boolean) RETURNS boolean
LANGUAGE plpgsql STABLE SECURITY DEFINER PARALLEL SAFE SET search_path = public, pg_temp SET enable_seqscan = off SET plan_cache_mode = force_custom_plan AS $$
DECLARE
  club uuid := NULLIF(current_setting('trunnion.club', true), '')::uuid;
BEGIN
  RETURN EXISTS (SELECT FROM car_text t WHERE t.club_id = club AND t.text LIKE pattern AND (keepers OR t.section <> 'keeper'));
END $$;
COMMENT ON FUNCTION somebody_has(text, boolean) IS 'Whether a text of the transaction''s club''s cars is like a pattern; keepers'' names too where asked for.';
