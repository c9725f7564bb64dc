-- Vocabularies. Words and order are those of packages/contracts/src/taxonomy.ts; a test compares them.
CREATE TYPE role AS ENUM ('viewer', 'inspector', 'engineer', 'manager', 'administrator');
CREATE TYPE cause AS ENUM ('tooling', 'handling', 'partial_seat', 'misinsertion', 'probe_damage', 'wire_dress', 'adhesive', 'component', 'application_limit', 'undetermined');
CREATE TYPE source AS ENUM ('line', 'audit', 'customer', 'field');
CREATE TYPE effect AS ENUM ('open_circuit', 'intermittent', 'high_resistance', 'heating', 'mating_blocked', 'neighbour_short', 'seal_out', 'no_effect');
CREATE TYPE disposition AS ENUM ('reworked', 'scrapped', 'sorted', 'replaced', 'returned', 'used_as_is', 'pending');
CREATE TYPE lock_state AS ENUM ('none_fitted', 'closed', 'open', 'forced', 'missing', 'would_not_close', 'unknown');
CREATE TYPE retention_style AS ENUM ('terminal_lance', 'housing_latch');
CREATE TYPE secondary_lock_kind AS ENUM ('none', 'separate', 'preassembled', 'two_piece');
CREATE TYPE tool_kind AS ENUM ('applicator', 'crimp_die', 'hand_tool', 'insertion_tool', 'removal_tool', 'test_fixture', 'test_probe', 'other');
CREATE TYPE cost_category AS ENUM ('rework_labour', 'parts', 'scrap', 'sorting', 'line_stop', 'freight', 'travel', 'customer_charge', 'warranty', 'administration');
CREATE TYPE cost_basis AS ENUM ('booked', 'estimated');
CREATE TYPE cost_rate_kind AS ENUM ('labour', 'line_stop');
CREATE TYPE import_kind AS ENUM ('failures', 'production');
CREATE TYPE import_state AS ENUM ('uploaded', 'checking', 'checked', 'committing', 'committed', 'cancelled', 'failed', 'interrupted');

-- The group that runs the service: one row.
CREATE TABLE organisation (
  id smallint PRIMARY KEY DEFAULT 1 CHECK (id = 1),
  name text NOT NULL,
  currency char(3) NOT NULL,
  demo_loaded_at timestamptz,
  version int NOT NULL DEFAULT 1
);
INSERT INTO organisation (name, currency) VALUES ('Our group', 'EUR');

CREATE TABLE plant (
  id uuid PRIMARY KEY,
  code text NOT NULL UNIQUE,
  name text NOT NULL,
  zone text NOT NULL,
  currency char(3) NOT NULL,
  week_start smallint NOT NULL DEFAULT 1 CHECK (week_start BETWEEN 1 AND 7),
  locale text NOT NULL DEFAULT 'en',
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);

-- People
CREATE TABLE person (
  id uuid PRIMARY KEY,
  name text NOT NULL,
  email text NOT NULL UNIQUE CHECK (email = lower(email)),
  password_hash text NOT NULL,
  must_change_password boolean NOT NULL DEFAULT true,
  locale text NOT NULL DEFAULT 'en',
  retired_at timestamptz,
  last_seen_at timestamptz,
  created_at timestamptz NOT NULL DEFAULT now(),
  version int NOT NULL DEFAULT 1
);
CREATE TABLE api_token (
  id uuid PRIMARY KEY,
  name text NOT NULL,
  secret_hash text NOT NULL UNIQUE,
  created_by uuid NOT NULL REFERENCES person (id),
  created_at timestamptz NOT NULL DEFAULT now(),
  expires_at timestamptz,
  revoked_at timestamptz,
  last_used_at timestamptz
);
-- A role for one plant, or for all where plant_id is null; held by a person or by a token.
CREATE TABLE role_grant (
  id uuid PRIMARY KEY,
  person_id uuid REFERENCES person (id),
  token_id uuid REFERENCES api_token (id),
  role role NOT NULL,
  plant_id uuid REFERENCES plant (id),
  CHECK (num_nonnulls(person_id, token_id) = 1),
  UNIQUE NULLS NOT DISTINCT (person_id, token_id, role, plant_id)
);
CREATE INDEX role_grant_token ON role_grant (token_id) WHERE token_id IS NOT NULL;
CREATE TABLE session (
  secret_hash text PRIMARY KEY,
  person_id uuid NOT NULL REFERENCES person (id),
  created_at timestamptz NOT NULL,
  last_seen_at timestamptz NOT NULL,
  expires_at timestamptz NOT NULL
);
CREATE INDEX session_person ON session (person_id);
CREATE TABLE idempotency_key (
  actor_id uuid NOT NULL,
  key text NOT NULL,
  request_hash text NOT NULL,
  status smallint NOT NULL,
  response jsonb,
  created_at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (actor_id, key)
);
CREATE INDEX idempotency_key_age ON idempotency_key (created_at);
CREATE TABLE audit_entry (
  id uuid PRIMARY KEY,
  at timestamptz NOT NULL,
  actor_id uuid,
  actor text NOT NULL,
  action text NOT NULL,
  entity text NOT NULL,
  entity_id text NOT NULL,
  label text NOT NULL,
  plant_id uuid,
  before jsonb,
  after jsonb
);
CREATE INDEX audit_entry_entity ON audit_entry (entity, entity_id, id DESC);
CREATE INDEX audit_entry_plant ON audit_entry (plant_id, id DESC);
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'rows of % are never changed or removed', TG_TABLE_NAME;
END $$;
CREATE TRIGGER audit_entry_is_final BEFORE UPDATE OR DELETE ON audit_entry FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- Master data. Nothing here is ever deleted, only retired, so that big tables can name a row without a foreign key each.
CREATE TABLE line (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  code text NOT NULL,
  name text NOT NULL,
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1,
  UNIQUE (plant_id, code)
);
CREATE TABLE stage (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  code text NOT NULL,
  name text NOT NULL,
  common smallint NOT NULL CHECK (common BETWEEN 1 AND 10),
  position smallint NOT NULL,
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1,
  UNIQUE (plant_id, code)
);
CREATE TABLE housing (
  id uuid PRIMARY KEY,
  code text NOT NULL UNIQUE,
  name text NOT NULL,
  rows smallint NOT NULL CHECK (rows BETWEEN 1 AND 40),
  columns smallint NOT NULL CHECK (columns BETWEEN 1 AND 60),
  missing_cavities text[] NOT NULL DEFAULT '{}',
  retention_style retention_style NOT NULL,
  secondary_lock secondary_lock_kind NOT NULL,
  safety_relevant boolean NOT NULL DEFAULT false,
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE TABLE terminal (
  id uuid PRIMARY KEY,
  code text NOT NULL UNIQUE,
  name text NOT NULL,
  wire_min_mm2 numeric(8, 4) NOT NULL CHECK (wire_min_mm2 > 0),
  wire_max_mm2 numeric(8, 4) NOT NULL,
  min_retention_n numeric(8, 2) CHECK (min_retention_n > 0),
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1,
  CHECK (wire_max_mm2 >= wire_min_mm2)
);
CREATE TABLE wire (
  id uuid PRIMARY KEY,
  code text NOT NULL UNIQUE,
  name text NOT NULL,
  section_mm2 numeric(8, 4) NOT NULL CHECK (section_mm2 > 0),
  insulation_mm numeric(6, 3) CHECK (insulation_mm > 0),
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE TABLE tool (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  code text NOT NULL,
  name text NOT NULL,
  kind tool_kind NOT NULL,
  type text,
  cycle_count bigint NOT NULL DEFAULT 0 CHECK (cycle_count >= 0),
  service_interval bigint CHECK (service_interval > 0),
  serviced_at_count bigint NOT NULL DEFAULT 0,
  serviced_on date,
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1,
  UNIQUE (plant_id, code)
);
-- Tools approved for a terminal, by tool type (one approval serves every plant that owns such a tool).
CREATE TABLE terminal_tool_type (
  terminal_id uuid NOT NULL REFERENCES terminal (id),
  tool_type text NOT NULL,
  PRIMARY KEY (terminal_id, tool_type)
);
CREATE TABLE customer (
  id uuid PRIMARY KEY,
  code text NOT NULL UNIQUE,
  name text NOT NULL,
  locale text NOT NULL DEFAULT 'en',
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);

-- Money. Each row holds from its date until the next row of the same key.
CREATE TABLE cost_rate (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  kind cost_rate_kind NOT NULL,
  valid_from date NOT NULL,
  hourly_minor bigint NOT NULL CHECK (hourly_minor >= 0),
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE UNIQUE INDEX cost_rate_key ON cost_rate (plant_id, kind, valid_from) WHERE retired_at IS NULL;
CREATE TABLE standard_cost (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  stage smallint NOT NULL CHECK (stage BETWEEN 1 AND 10),
  disposition disposition NOT NULL,
  valid_from date NOT NULL,
  terminal_minor bigint NOT NULL CHECK (terminal_minor >= 0),
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE UNIQUE INDEX standard_cost_key ON standard_cost (plant_id, stage, disposition, valid_from) WHERE retired_at IS NULL;
CREATE TABLE exchange_rate (
  id uuid PRIMARY KEY,
  base char(3) NOT NULL,
  quote char(3) NOT NULL,
  valid_from date NOT NULL,
  rate numeric(20, 10) NOT NULL CHECK (rate > 0),
  retired_at timestamptz,
  version int NOT NULL DEFAULT 1,
  CHECK (base <> quote)
);
CREATE UNIQUE INDEX exchange_rate_key ON exchange_rate (base, quote, valid_from) WHERE retired_at IS NULL;

-- The first stage whose checks can see a cause. Common practice, no source.
CREATE TABLE cause_gate (
  cause cause PRIMARY KEY,
  visible_from smallint CHECK (visible_from BETWEEN 1 AND 10)
);
INSERT INTO cause_gate VALUES ('tooling', 2), ('handling', 4), ('partial_seat', 5), ('misinsertion', 5), ('probe_damage', 8),
  ('wire_dress', 8), ('adhesive', 8), ('component', 1), ('application_limit', 8), ('undetermined', NULL);

-- Imports
CREATE TABLE import_job (
  id uuid PRIMARY KEY,
  kind import_kind NOT NULL,
  state import_state NOT NULL,
  source text NOT NULL,
  file_name text NOT NULL,
  file_path text NOT NULL,
  sha256 text NOT NULL,
  bytes bigint NOT NULL,
  format jsonb NOT NULL DEFAULT '{}',
  mapping jsonb NOT NULL DEFAULT '{}',
  progress jsonb NOT NULL DEFAULT '{}',
  result jsonb NOT NULL DEFAULT '{}',
  created_by uuid NOT NULL,
  created_at timestamptz NOT NULL,
  finished_at timestamptz,
  version int NOT NULL DEFAULT 1
);
CREATE INDEX import_job_created ON import_job (created_by, id DESC);
-- What a source's columns and words mean, kept from one import to the next.
CREATE TABLE import_mapping (
  kind import_kind NOT NULL,
  source text NOT NULL,
  mapping jsonb NOT NULL,
  updated_at timestamptz NOT NULL,
  PRIMARY KEY (kind, source)
);
CREATE TABLE import_value (
  id uuid PRIMARY KEY DEFAULT gen_random_uuid(),
  kind import_kind NOT NULL,
  source text NOT NULL,
  field text NOT NULL,
  plant_id uuid,
  raw text NOT NULL,
  target text NOT NULL,
  updated_at timestamptz NOT NULL,
  UNIQUE NULLS NOT DISTINCT (kind, source, field, plant_id, raw)
);

-- Failure reports
CREATE TABLE report_counter (
  plant_id uuid NOT NULL REFERENCES plant (id),
  year smallint NOT NULL,
  last int NOT NULL,
  PRIMARY KEY (plant_id, year)
);
CREATE TABLE failure (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  number text NOT NULL,
  external_ref text,
  reported_at timestamptz NOT NULL,
  reported_by uuid,
  found_on date NOT NULL,
  found_at timestamptz,
  built_on date,
  line_id uuid,
  station text,
  shift text,
  stage_id uuid,
  found smallint NOT NULL CHECK (found BETWEEN 1 AND 10),
  source source NOT NULL,
  housing_id uuid,
  terminal_id uuid,
  wire_id uuid,
  tool_id uuid,
  other_tool_ids uuid[] NOT NULL DEFAULT '{}',
  fixture_position text,
  cavities text[] NOT NULL DEFAULT '{}',
  cavity text GENERATED ALWAYS AS (CASE cardinality(cavities) WHEN 0 THEN NULL WHEN 1 THEN cavities[1] ELSE 'several' END) STORED,
  reel_lot text,
  housing_lot text,
  serial_from text,
  serial_to text,
  customer_id uuid,
  customer_ref text,
  effect effect,
  quantity_found int NOT NULL CHECK (quantity_found > 0),
  quantity_inspected int CHECK (quantity_inspected >= quantity_found),
  lock_state lock_state NOT NULL DEFAULT 'unknown',
  disposition disposition NOT NULL DEFAULT 'pending',
  safety boolean NOT NULL DEFAULT false,
  note text,
  cause cause,
  sub_cause text,
  origin smallint CHECK (origin BETWEEN 1 AND 10),
  proof text,
  sorted_at timestamptz,
  sorted_by uuid,
  photo_count int NOT NULL DEFAULT 0,
  -- money in the plant's currency, minor units
  cost_items int NOT NULL DEFAULT 0,
  booked_minor bigint NOT NULL DEFAULT 0,
  estimated_minor bigint NOT NULL DEFAULT 0,
  standard_minor bigint,
  gate smallint,
  gate_minor bigint,
  gates_passed smallint,
  import_id uuid,
  import_line int,
  voided_at timestamptz,
  void_reason text,
  version int NOT NULL DEFAULT 1,
  search tsvector GENERATED ALWAYS AS (
    to_tsvector('simple', coalesce(number, '') || ' ' || coalesce(external_ref, '') || ' ' || coalesce(station, '') || ' ' || coalesce(reel_lot, '') || ' '
      || coalesce(housing_lot, '') || ' ' || coalesce(serial_from, '') || ' ' || coalesce(serial_to, '') || ' ' || coalesce(customer_ref, '') || ' '
      || coalesce(note, '') || ' ' || coalesce(proof, ''))
  ) STORED,
  PRIMARY KEY (id, plant_id),
  CHECK (origin IS NULL OR origin <= found),
  CHECK (built_on IS NULL OR built_on <= found_on),
  CHECK ((voided_at IS NULL) = (void_reason IS NULL))
);
CREATE UNIQUE INDEX failure_number ON failure (plant_id, number);
CREATE UNIQUE INDEX failure_external_ref ON failure (plant_id, external_ref) WHERE external_ref IS NOT NULL;
CREATE INDEX failure_newest ON failure (found_on DESC, id DESC);
CREATE INDEX failure_plant_newest ON failure (plant_id, found_on DESC, id DESC);
CREATE INDEX failure_search ON failure USING gin (search);
CREATE INDEX failure_import ON failure (import_id) WHERE import_id IS NOT NULL;

CREATE TABLE cause_change (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  at timestamptz NOT NULL,
  person_id uuid,
  actor text NOT NULL,
  cause cause,
  sub_cause text,
  origin smallint,
  proof text,
  reason text,
  PRIMARY KEY (id, plant_id)
);
CREATE INDEX cause_change_failure ON cause_change (plant_id, failure_id, id);
CREATE TRIGGER cause_change_is_final BEFORE UPDATE OR DELETE ON cause_change FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE cost_item (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  category cost_category NOT NULL,
  basis cost_basis NOT NULL,
  incurred_on date NOT NULL,
  amount_minor bigint NOT NULL,
  currency char(3) NOT NULL,
  plant_minor bigint NOT NULL,
  rate_on date,
  minutes int,
  note text,
  removed_at timestamptz,
  PRIMARY KEY (id, plant_id)
);
CREATE INDEX cost_item_failure ON cost_item (plant_id, failure_id);

CREATE TABLE photo (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  file text NOT NULL,
  width int NOT NULL,
  height int NOT NULL,
  bytes int NOT NULL,
  caption text,
  added_at timestamptz NOT NULL,
  added_by uuid,
  removed_at timestamptz,
  PRIMARY KEY (id, plant_id)
);
CREATE INDEX photo_failure ON photo (plant_id, failure_id);

-- Production: the denominators of every rate.
CREATE TABLE production (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  day date NOT NULL,
  line_id uuid,
  housing_id uuid,
  terminal_id uuid,
  units bigint NOT NULL CHECK (units >= 0),
  terminals bigint NOT NULL CHECK (terminals >= 0),
  import_id uuid,
  import_line int,
  version int NOT NULL DEFAULT 1,
  PRIMARY KEY (id, plant_id),
  UNIQUE NULLS NOT DISTINCT (plant_id, day, line_id, housing_id, terminal_id)
);
CREATE INDEX production_day ON production (day) INCLUDE (plant_id, line_id, housing_id, terminal_id, units, terminals);

CREATE TABLE saved_filter (
  id uuid PRIMARY KEY,
  person_id uuid NOT NULL REFERENCES person (id),
  page text NOT NULL,
  name text NOT NULL,
  query text NOT NULL,
  UNIQUE (person_id, page, name)
);

-- Money periods: a row holds from valid_from until valid_to (exclusive, null: open).
CREATE VIEW standard_cost_period AS
SELECT s.plant_id, s.stage, s.disposition, s.terminal_minor, s.valid_from,
  lead(s.valid_from) OVER (PARTITION BY s.plant_id, s.stage, s.disposition ORDER BY s.valid_from) AS valid_to
FROM standard_cost s WHERE s.retired_at IS NULL;

-- Derived figures of a report: what it costs by standard, the first gate able to see it, and what it would have cost there
-- (scrap stays scrap, anything else counts as rework), and how many of the plant's gates it passed.
CREATE VIEW failure_figures AS
SELECT f.id, f.plant_id,
  (SELECT sc.terminal_minor * f.quantity_found FROM standard_cost_period sc
    WHERE sc.plant_id = f.plant_id AND sc.stage = f.found AND sc.disposition = f.disposition
      AND sc.valid_from <= f.found_on AND (sc.valid_to IS NULL OR f.found_on < sc.valid_to)) AS standard_minor,
  g.gate,
  (SELECT sc.terminal_minor * f.quantity_found FROM standard_cost_period sc
    WHERE sc.plant_id = f.plant_id AND sc.stage = g.gate
      AND sc.disposition = CASE WHEN f.disposition = 'scrapped' THEN 'scrapped'::disposition ELSE 'reworked'::disposition END
      AND sc.valid_from <= f.found_on AND (sc.valid_to IS NULL OR f.found_on < sc.valid_to)) AS gate_minor,
  (SELECT count(DISTINCT s.common) FROM stage s
    WHERE s.plant_id = f.plant_id AND s.retired_at IS NULL AND f.origin IS NOT NULL AND s.common > f.origin AND s.common < f.found)
    * CASE WHEN f.origin IS NULL THEN NULL ELSE 1 END AS gates_passed
FROM failure f
LEFT JOIN LATERAL (
  SELECT min(s.common) AS gate FROM cause_gate cg JOIN stage s ON s.plant_id = f.plant_id AND s.retired_at IS NULL
  WHERE cg.cause = f.cause AND s.common >= greatest(f.origin, cg.visible_from) AND f.origin IS NOT NULL AND cg.visible_from IS NOT NULL
) g ON true;

-- What counts as a failure: decided here, once. Every analysis reads these views.
CREATE VIEW failure_fact AS
SELECT f.id, f.plant_id, f.found_on, f.built_on, f.line_id, f.station, f.shift, f.source, f.found, f.origin, f.cause, f.sub_cause, f.housing_id,
  f.terminal_id, f.wire_id, f.tool_id, f.cavity, f.reel_lot, f.housing_lot, f.customer_id, f.effect, f.disposition, f.lock_state, f.safety,
  f.quantity_found AS terminals, f.booked_minor,
  CASE WHEN f.cost_items = 0 THEN coalesce(f.standard_minor, 0) ELSE f.estimated_minor END AS estimate_minor,
  (f.cost_items > 0 OR f.standard_minor IS NOT NULL) AS costed,
  f.gate, f.gate_minor, f.gates_passed, (f.photo_count > 0 OR f.proof IS NOT NULL) AS evidence, f.import_id, f.search, f.number
FROM failure f WHERE f.voided_at IS NULL;

CREATE VIEW production_fact AS
SELECT p.plant_id, p.day, p.line_id, p.housing_id, p.terminal_id, p.units, p.terminals FROM production p;
