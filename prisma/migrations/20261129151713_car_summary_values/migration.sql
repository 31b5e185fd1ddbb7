-- AlterTable
ALTER TABLE "car_summary" ADD COLUMN     "values" INTEGER NOT NULL DEFAULT 0;

COMMENT ON COLUMN "car_summary"."values" IS 'Values that its record has.';

UPDATE "car_summary" s SET "values" = v.count
FROM (SELECT club_id, car_id, count(*)::int AS count FROM "current_value" GROUP BY club_id, car_id) AS v
WHERE v.club_id = s.club_id AND v.car_id = s.car_id;

-- The service's role owns no table, and only an owner may have one looked at. It learns nothing by it.
CREATE FUNCTION tell_planner() RETURNS void LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
  ANALYZE car, car_identity, car_status_span, car_option, keepership, as_built_value, submission, modification,
    modification_change, setting_sheet, reading, current_value, stale_car;
END $$;
COMMENT ON FUNCTION tell_planner() IS 'Has the planner look at the tables of cars'' records, after many were written.';
