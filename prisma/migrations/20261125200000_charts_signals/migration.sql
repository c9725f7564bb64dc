-- Dated services of a tool, kept as its master data says them: a new count of cycles is a new service, the same count with another
-- day corrects the last one. Charts draw them on the time axis.
CREATE TABLE tool_service (
  tool_id uuid NOT NULL REFERENCES tool (id),
  serviced_on date NOT NULL,
  plant_id uuid NOT NULL REFERENCES plant (id),
  at_count bigint NOT NULL,
  PRIMARY KEY (tool_id, serviced_on)
);
CREATE INDEX tool_service_day ON tool_service (plant_id, serviced_on);
INSERT INTO tool_service (tool_id, serviced_on, plant_id, at_count)
SELECT t.id, t.serviced_on, t.plant_id, t.serviced_at_count FROM tool t WHERE t.serviced_on IS NOT NULL;

CREATE FUNCTION keep_tool_service() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' THEN
    IF OLD.serviced_on IS NOT DISTINCT FROM NEW.serviced_on AND OLD.serviced_at_count = NEW.serviced_at_count THEN RETURN NULL; END IF;
    IF OLD.serviced_at_count = NEW.serviced_at_count OR OLD.serviced_on = NEW.serviced_on THEN
      DELETE FROM tool_service s WHERE s.tool_id = OLD.id AND s.serviced_on = OLD.serviced_on;
    END IF;
  END IF;
  IF NEW.serviced_on IS NOT NULL THEN
    INSERT INTO tool_service (tool_id, serviced_on, plant_id, at_count) VALUES (NEW.id, NEW.serviced_on, NEW.plant_id, NEW.serviced_at_count)
    ON CONFLICT (tool_id, serviced_on) DO UPDATE SET at_count = EXCLUDED.at_count;
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER keep_service AFTER INSERT OR UPDATE OF serviced_on, serviced_at_count ON tool FOR EACH ROW EXECUTE FUNCTION keep_tool_service();

-- A signal called "not news": by whom, why, until when, and how large it was then. No plant: it spans plants.
CREATE TABLE signal_silence (
  id uuid PRIMARY KEY,
  plant_id uuid REFERENCES plant (id),
  key text NOT NULL,
  label text NOT NULL,
  reason text NOT NULL,
  until date NOT NULL,
  observed int NOT NULL,
  expected double precision NOT NULL,
  ratio double precision NOT NULL,
  silenced_at timestamptz NOT NULL,
  silenced_by text NOT NULL,
  ended_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE UNIQUE INDEX signal_silence_key ON signal_silence (key) WHERE ended_at IS NULL;

-- The position in a test fixture, which reports have always carried, among what analyses can count and filter by.
CREATE OR REPLACE VIEW failure_fact AS
SELECT f.id, f.plant_id, f.found_on, f.built_on, f.line_id, f.station, f.shift, f.source, f.found, f.origin, f.cause, f.sub_cause, f.housing_id,
  f.terminal_id, f.wire_id, f.tool_id, f.cavity, f.reel_lot, f.housing_lot, f.customer_id, f.effect, f.disposition, f.lock_state, f.safety,
  f.quantity_found AS terminals, f.booked_minor,
  CASE WHEN f.cost_items = 0 THEN coalesce(f.standard_minor, 0) ELSE f.estimated_minor END AS estimate_minor,
  (f.cost_items > 0 OR f.standard_minor IS NOT NULL) AS costed,
  f.gate, f.gate_minor, f.gates_passed, (f.photo_count > 0 OR f.proof IS NOT NULL) AS evidence, f.import_id, f.search, f.number,
  (f.cost_items = 0) AS standard_only, f.fixture_position
FROM failure f WHERE f.voided_at IS NULL;

-- What signals count combinations by, read from the index alone.
CREATE INDEX failure_marked ON failure (found_on) INCLUDE (plant_id, housing_id, terminal_id, tool_id, cavity, reel_lot, housing_lot, fixture_position)
  WHERE voided_at IS NULL;
