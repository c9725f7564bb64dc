-- Whether a report's estimate is its standard cost alone, because it has no cost item.
CREATE OR REPLACE VIEW failure_fact AS
SELECT f.id, f.plant_id, f.found_on, f.built_on, f.line_id, f.station, f.shift, f.source, f.found, f.origin, f.cause, f.sub_cause, f.housing_id,
  f.terminal_id, f.wire_id, f.tool_id, f.cavity, f.reel_lot, f.housing_lot, f.customer_id, f.effect, f.disposition, f.lock_state, f.safety,
  f.quantity_found AS terminals, f.booked_minor,
  CASE WHEN f.cost_items = 0 THEN coalesce(f.standard_minor, 0) ELSE f.estimated_minor END AS estimate_minor,
  (f.cost_items > 0 OR f.standard_minor IS NOT NULL) AS costed,
  f.gate, f.gate_minor, f.gates_passed, (f.photo_count > 0 OR f.proof IS NOT NULL) AS evidence, f.import_id, f.search, f.number,
  (f.cost_items = 0) AS standard_only
FROM failure f WHERE f.voided_at IS NULL;

-- The cost items that count, in the plant's currency. Read beside failure_fact, which knows whether the report counts.
CREATE VIEW cost_fact AS
SELECT c.plant_id, c.failure_id, c.category, c.basis, c.plant_minor FROM cost_item c WHERE c.removed_at IS NULL;
