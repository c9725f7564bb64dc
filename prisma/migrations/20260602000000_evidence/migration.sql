-- Findings taken on a report. Those that the data answers are computed when asked for and not stored here.
CREATE TYPE finding_answer AS ENUM ('yes', 'no', 'could_not_tell');
CREATE TABLE finding (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  code text NOT NULL,
  answer finding_answer NOT NULL,
  value numeric(14, 4),
  limit_value numeric(14, 4),
  unit text,
  note text,
  import_id uuid,
  taken_by text NOT NULL,
  taken_at timestamptz NOT NULL,
  PRIMARY KEY (id, plant_id),
  UNIQUE (plant_id, failure_id, code)
);

-- A decision on the cause, with what the suggestion said and knew at that moment. Arrays follow the causes' order without `undetermined`.
CREATE TABLE confirmation (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  housing_id uuid,
  at timestamptz NOT NULL,
  person_id uuid,
  actor text NOT NULL,
  cause cause NOT NULL,
  suggested cause NOT NULL,
  frequent cause NOT NULL,
  reason text,
  answers jsonb NOT NULL,
  taken int NOT NULL,
  probabilities double precision[] NOT NULL,
  base double precision[] NOT NULL,
  temperature double precision NOT NULL,
  model_version int NOT NULL,
  superseded_at timestamptz,
  PRIMARY KEY (id, plant_id)
);
CREATE UNIQUE INDEX confirmation_failure ON confirmation (plant_id, failure_id) WHERE superseded_at IS NULL;
CREATE INDEX confirmation_newest ON confirmation (id DESC) WHERE superseded_at IS NULL;

-- What confirmed cases taught, as counts, so that a suggestion never reads the cases themselves.
CREATE TABLE learned_version (
  plant_id uuid PRIMARY KEY REFERENCES plant (id),
  version int NOT NULL,
  cases int NOT NULL
);
CREATE TABLE learned_answer (
  plant_id uuid NOT NULL,
  code text NOT NULL,
  cause cause NOT NULL,
  yes int NOT NULL,
  no int NOT NULL,
  PRIMARY KEY (plant_id, code, cause)
);
CREATE TABLE learned_pair (
  plant_id uuid NOT NULL,
  first text NOT NULL,
  second text NOT NULL,
  cause cause NOT NULL,
  yes_yes int NOT NULL,
  yes_no int NOT NULL,
  no_yes int NOT NULL,
  no_no int NOT NULL,
  PRIMARY KEY (plant_id, first, second, cause)
);

-- How often each cause was decided on, by plant and part: the base rates. Kept by statement triggers on the reports.
CREATE TABLE cause_tally (
  plant_id uuid NOT NULL,
  housing_id uuid NOT NULL, -- all zeros where the report names none
  cause cause NOT NULL,
  reports int NOT NULL,
  PRIMARY KEY (plant_id, housing_id, cause)
);
CREATE FUNCTION tally_causes() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE nowhere constant uuid := '00000000-0000-0000-0000-000000000000';
BEGIN
  IF TG_OP = 'INSERT' THEN
    INSERT INTO cause_tally AS t
    SELECT n.plant_id, coalesce(n.housing_id, nowhere), n.cause, count(*) FROM new_rows n
    WHERE n.cause IS NOT NULL AND n.voided_at IS NULL GROUP BY 1, 2, 3 ORDER BY 1, 2, 3
    ON CONFLICT (plant_id, housing_id, cause) DO UPDATE SET reports = t.reports + excluded.reports;
  ELSE
    INSERT INTO cause_tally AS t
    SELECT plant_id, coalesce(housing_id, nowhere), cause, sum(step) FROM (
      SELECT n.plant_id, n.housing_id, n.cause, 1 AS step FROM new_rows n WHERE n.cause IS NOT NULL AND n.voided_at IS NULL
      UNION ALL
      SELECT o.plant_id, o.housing_id, o.cause, -1 FROM old_rows o WHERE o.cause IS NOT NULL AND o.voided_at IS NULL
    ) moved GROUP BY 1, 2, 3 HAVING sum(step) <> 0 ORDER BY 1, 2, 3
    ON CONFLICT (plant_id, housing_id, cause) DO UPDATE SET reports = t.reports + excluded.reports;
  END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER failure_tally_insert AFTER INSERT ON failure REFERENCING NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION tally_causes();
CREATE TRIGGER failure_tally_update AFTER UPDATE ON failure REFERENCING OLD TABLE AS old_rows NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION tally_causes();
INSERT INTO cause_tally SELECT f.plant_id, coalesce(f.housing_id, '00000000-0000-0000-0000-000000000000'), f.cause, count(*)
FROM failure f WHERE f.cause IS NOT NULL AND f.voided_at IS NULL GROUP BY 1, 2, 3;

-- What the computed findings look up.
CREATE INDEX failure_tool ON failure (plant_id, tool_id, found_on) WHERE tool_id IS NOT NULL;
CREATE INDEX failure_fixture ON failure (plant_id, fixture_position, found_on) WHERE fixture_position IS NOT NULL;

-- Blind second opinions on confirmed reports.
CREATE TABLE opinion (
  id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  confirmation_id uuid NOT NULL,
  first_cause cause NOT NULL,
  first_person_id uuid,
  asked_at timestamptz NOT NULL,
  asked_by text NOT NULL,
  cause cause,
  given_by uuid,
  given_at timestamptz,
  PRIMARY KEY (id, plant_id),
  UNIQUE (plant_id, confirmation_id)
);
CREATE INDEX opinion_waiting ON opinion (plant_id, id) WHERE given_at IS NULL;
