-- Whatever asks for one characteristic across the cars finds all it counts by in the index: the table lies car by car, and
-- one value of each car would be one block of it each. (The models know no INCLUDE; the database has it.)
CREATE INDEX "current_value_club_id_characteristic_car_id_idx" ON "current_value"("club_id", "characteristic", "car_id")
  INCLUDE ("side", "value_kind", "number", "resolution", "text", "verdict");
