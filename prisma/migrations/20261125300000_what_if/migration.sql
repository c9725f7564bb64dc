-- Reports from customers and the field, by the day of building: few of all reports, asked for over all time.
CREATE INDEX failure_outside ON failure (built_on) INCLUDE (plant_id, found_on, found, source, origin, cause, line_id, housing_id, terminal_id, tool_id)
  WHERE voided_at IS NULL AND (source IN ('customer', 'field') OR found = 10);

-- A saved scenario: what was asked, and the figures as they were then. They never move with later reports.
CREATE TABLE what_if (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  name text NOT NULL,
  note text,
  query text NOT NULL,
  input jsonb NOT NULL,
  result jsonb NOT NULL,
  created_by text NOT NULL,
  created_at timestamptz NOT NULL,
  computed_at timestamptz NOT NULL,
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE INDEX what_if_plant ON what_if (plant_id, id DESC);
