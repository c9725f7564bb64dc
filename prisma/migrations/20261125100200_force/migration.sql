-- Findings for reports that are there, and force samples, come in by import as well.
ALTER TYPE import_kind ADD VALUE 'findings';
ALTER TYPE import_kind ADD VALUE 'force';

-- Retention and pull-out forces: a sample is the single values measured on one terminal and tool on one day.
CREATE TYPE force_kind AS ENUM ('retention', 'pull_out');
CREATE TYPE force_unit AS ENUM ('N', 'lbf');
CREATE TABLE force_sample (
  id uuid NOT NULL,
  plant_id uuid NOT NULL REFERENCES plant (id),
  kind force_kind NOT NULL,
  day date NOT NULL,
  terminal_id uuid NOT NULL REFERENCES terminal (id),
  tool_id uuid REFERENCES tool (id),
  housing_id uuid REFERENCES housing (id),
  wire_id uuid REFERENCES wire (id),
  reference text,
  unit force_unit NOT NULL,
  -- as measured, in `unit` and in the order of measurement; and the same in newtons
  entered double precision[] NOT NULL,
  newtons double precision[] NOT NULL,
  -- what a drawing or a standard asks of this sample, in newtons; without it the terminal's minimum retention force holds for retention
  minimum_n double precision,
  note text,
  recorded_at timestamptz NOT NULL,
  recorded_by text NOT NULL,
  import_id uuid,
  voided_at timestamptz,
  void_reason text,
  version int NOT NULL DEFAULT 1,
  PRIMARY KEY (id, plant_id),
  CHECK (cardinality(newtons) BETWEEN 1 AND 1000 AND cardinality(newtons) = cardinality(entered)),
  CHECK (minimum_n > 0)
);
-- What a sample is known by: the same sent twice is one. A second one of the day names a reference.
CREATE UNIQUE INDEX force_sample_key ON force_sample (plant_id, kind, terminal_id, day, tool_id, housing_id, wire_id, reference)
  NULLS NOT DISTINCT WHERE voided_at IS NULL;
CREATE INDEX force_sample_list ON force_sample (plant_id, day DESC, id DESC) WHERE voided_at IS NULL;
CREATE INDEX force_sample_terminal ON force_sample (terminal_id, kind, day) WHERE voided_at IS NULL;
