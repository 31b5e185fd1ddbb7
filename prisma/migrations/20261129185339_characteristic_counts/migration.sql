-- In which assembly a characteristic stands, and whether it is a day that falls due, decides what its cars count under.
CREATE FUNCTION note_stale_characteristics() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO stale_car (club_id, id, car_id) SELECT club_id, gen_random_uuid(), car_id
    FROM (SELECT DISTINCT v.club_id, v.car_id FROM current_value v
      JOIN changed c ON c.club_id = v.club_id AND c.key = v.characteristic) AS car;
  RETURN NULL;
END $$;
COMMENT ON FUNCTION note_stale_characteristics() IS 'Notes down the cars that have a value of a characteristic which was changed.';
CREATE TRIGGER stale_after_update AFTER UPDATE ON "characteristic" REFERENCING NEW TABLE AS changed
  FOR EACH STATEMENT EXECUTE FUNCTION note_stale_characteristics();
