-- Roll-ups of reports and production for the analyses: sums per cell, kept in the same transaction by triggers on whole statements.
-- They answer what they carry; anything else is asked of failure_fact. Words stand in for empty keys, so that keys are never null:
-- cause 'none', origin 0, key of zeros. Largest values count from 0 on. Squares are numeric, so that adding and taking away is exact.

-- One counted report in the form in which a roll-up keeps many. The only place that says what is summed.
CREATE VIEW failure_cell AS
SELECT f.id, f.plant_id, f.found_on, f.cause, f.origin, f.found, coalesce(f.gates_passed >= 2, false) AS passed_two, f.line_id, f.housing_id,
  f.terminal_id, f.tool_id, f.quantity_found AS terminals, f.booked_minor AS booked,
  CASE WHEN f.cost_items = 0 THEN coalesce(f.standard_minor, 0) ELSE f.estimated_minor END AS estimate,
  (f.cost_items = 0 AND f.standard_minor IS NULL)::int AS without_cost,
  (f.source IN ('customer', 'field'))::int AS outside,
  (f.photo_count = 0 AND f.proof IS NULL)::int AS no_evidence,
  CASE WHEN f.cost_items = 0 THEN coalesce(f.standard_minor, 0) ELSE 0 END AS standard,
  (f.booked_minor > 0)::int AS priced,
  CASE WHEN f.booked_minor > 0 THEN round(1e6 * ln(f.booked_minor::float8 / f.quantity_found))::bigint ELSE 0 END AS log_cost,
  (f.gate < f.found)::int AS late,
  CASE WHEN f.gate < f.found AND (f.cost_items > 0 OR f.standard_minor IS NOT NULL) AND f.gate_minor IS NOT NULL
    THEN f.booked_minor + CASE WHEN f.cost_items = 0 THEN coalesce(f.standard_minor, 0) ELSE f.estimated_minor END - f.gate_minor ELSE 0 END AS avoidable,
  (f.cause IS NULL OR f.cause = 'undetermined')::int AS no_cause,
  (f.cause <> 'undetermined' AND f.origin IS NULL)::int AS sorted_without_origin,
  (f.gate < f.found AND f.cost_items = 0 AND f.standard_minor IS NULL)::int AS late_without_cost,
  (f.gate < f.found AND f.gate_minor IS NULL AND (f.cost_items > 0 OR f.standard_minor IS NOT NULL))::int AS late_without_standard
FROM failure f WHERE f.voided_at IS NULL;

CREATE TABLE failure_by_day (
  day date NOT NULL,
  plant_id uuid NOT NULL,
  cause text NOT NULL,
  reports int NOT NULL,
  terminals bigint NOT NULL,
  terminals_squared numeric NOT NULL,
  terminals_largest int NOT NULL,
  booked bigint NOT NULL,
  booked_squared numeric NOT NULL,
  booked_largest bigint NOT NULL,
  estimate bigint NOT NULL,
  estimate_squared numeric NOT NULL,
  estimate_largest bigint NOT NULL,
  total_squared numeric NOT NULL,
  total_largest bigint NOT NULL,
  without_cost int NOT NULL,
  escaped int NOT NULL,
  outside int NOT NULL,
  no_origin int NOT NULL,
  no_evidence int NOT NULL,
  PRIMARY KEY (day, plant_id, cause)
);
-- Weeks from Monday.
CREATE TABLE failure_by_week (
  week date NOT NULL,
  plant_id uuid NOT NULL,
  origin smallint NOT NULL,
  found smallint NOT NULL,
  passed_two boolean NOT NULL,
  reports int NOT NULL,
  terminals bigint NOT NULL,
  terminals_squared numeric NOT NULL,
  terminals_largest int NOT NULL,
  booked bigint NOT NULL,
  booked_squared numeric NOT NULL,
  booked_largest bigint NOT NULL,
  estimate bigint NOT NULL,
  total_squared numeric NOT NULL,
  total_largest bigint NOT NULL,
  without_cost int NOT NULL,
  standard bigint NOT NULL,
  priced int NOT NULL,
  log_cost bigint NOT NULL,
  log_cost_squared numeric NOT NULL,
  late int NOT NULL,
  avoidable bigint NOT NULL,
  no_cause int NOT NULL,
  sorted_without_origin int NOT NULL,
  late_without_cost int NOT NULL,
  late_without_standard int NOT NULL,
  PRIMARY KEY (week, plant_id, origin, found, passed_two)
);
CREATE TABLE failure_by_month (
  dimension text NOT NULL,
  month date NOT NULL,
  plant_id uuid NOT NULL,
  key uuid NOT NULL,
  reports int NOT NULL,
  terminals bigint NOT NULL,
  terminals_squared numeric NOT NULL,
  terminals_largest int NOT NULL,
  booked bigint NOT NULL,
  booked_squared numeric NOT NULL,
  booked_largest bigint NOT NULL,
  estimate bigint NOT NULL,
  total_squared numeric NOT NULL,
  total_largest bigint NOT NULL,
  without_cost int NOT NULL,
  PRIMARY KEY (dimension, month, plant_id, key)
);
CREATE TABLE production_by_day (
  day date NOT NULL,
  plant_id uuid NOT NULL,
  reported int NOT NULL,
  units bigint NOT NULL,
  terminals bigint NOT NULL,
  PRIMARY KEY (day, plant_id)
);
CREATE TABLE production_by_month (
  dimension text NOT NULL,
  month date NOT NULL,
  plant_id uuid NOT NULL,
  key uuid NOT NULL,
  reported int NOT NULL,
  units bigint NOT NULL,
  terminals bigint NOT NULL,
  PRIMARY KEY (dimension, month, plant_id, key)
);

-- What the analyses read: the roll-ups under the names of failure_fact and production_fact, empty keys as nulls again.
CREATE VIEW failure_day_fact AS
SELECT r.day AS found_on, r.plant_id, nullif(r.cause, 'none')::cause AS cause, r.reports, r.terminals, r.terminals_squared, r.terminals_largest,
  r.booked, r.booked_squared, r.booked_largest, r.estimate, r.estimate_squared, r.estimate_largest, r.total_squared, r.total_largest, r.without_cost,
  r.escaped, r.outside, r.no_origin, r.no_evidence
FROM failure_by_day r;
CREATE VIEW failure_week_fact AS
SELECT r.week AS found_on, r.plant_id, nullif(r.origin, 0) AS origin, r.found, r.passed_two, r.reports, r.terminals, r.terminals_squared,
  r.terminals_largest, r.booked, r.booked_squared, r.booked_largest, r.estimate, r.total_squared, r.total_largest, r.without_cost, r.standard, r.priced,
  r.log_cost, r.log_cost_squared, r.late, r.avoidable, r.no_cause, r.sorted_without_origin, r.late_without_cost, r.late_without_standard
FROM failure_by_week r;
CREATE VIEW failure_month_fact AS
SELECT r.dimension, r.month AS found_on, r.plant_id,
  CASE r.dimension WHEN 'line' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS line_id,
  CASE r.dimension WHEN 'housing' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS housing_id,
  CASE r.dimension WHEN 'terminal' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS terminal_id,
  CASE r.dimension WHEN 'tool' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS tool_id,
  r.reports, r.terminals, r.terminals_squared, r.terminals_largest, r.booked, r.booked_squared, r.booked_largest, r.estimate, r.total_squared,
  r.total_largest, r.without_cost
FROM failure_by_month r;
CREATE VIEW production_day_fact AS
SELECT r.plant_id, r.day, r.units, r.terminals FROM production_by_day r;
CREATE VIEW production_month_fact AS
SELECT r.dimension, r.month AS day, r.plant_id,
  CASE r.dimension WHEN 'line' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS line_id,
  CASE r.dimension WHEN 'housing' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS housing_id,
  CASE r.dimension WHEN 'terminal' THEN nullif(r.key, '00000000-0000-0000-0000-000000000000') END AS terminal_id,
  r.units, r.terminals
FROM production_by_month r;

-- The trigger functions differ only in where the changed cells come from: one text makes all of them.
DO $make$
DECLARE
  cell text := rtrim(pg_get_viewdef('failure_cell'::regclass), ';');
  added text := replace(cell, 'FROM failure f', 'FROM new_rows f');
  removed text := replace(cell, 'FROM failure f', 'FROM old_rows f');
  -- Cells are written in the order of their keys, so that two statements never wait for each other in a circle.
  apply text := $sql$
    WITH changed AS MATERIALIZED (
      SELECT c.*, c.found_on - (c.found_on - date '1990-01-01') % 7 AS week, date_trunc('month', c.found_on::timestamp)::date AS month,
        c.sign * c.terminals::bigint * c.terminals AS terminals_squared, c.booked::numeric * (c.sign * c.booked) AS booked_squared,
        c.estimate::numeric * (c.sign * c.estimate) AS estimate_squared,
        (c.booked + c.estimate)::numeric * (c.sign * (c.booked + c.estimate)) AS total_squared
      FROM ({changed}) c
    ), by_day AS (
      INSERT INTO failure_by_day AS r
      SELECT c.found_on, c.plant_id, coalesce(c.cause::text, 'none') AS cause, sum(c.sign), sum(c.sign * c.terminals), sum(c.terminals_squared),
        coalesce(max(c.terminals) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.booked), sum(c.booked_squared),
        coalesce(max(greatest(c.booked, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.estimate), sum(c.estimate_squared),
        coalesce(max(greatest(c.estimate, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.total_squared),
        coalesce(max(greatest(c.booked + c.estimate, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.without_cost),
        sum(c.sign * c.passed_two::int), sum(c.sign * c.outside), sum(c.sign * (c.origin IS NULL)::int), sum(c.sign * c.no_evidence)
      FROM changed c GROUP BY 1, 2, 3 ORDER BY 1, 2, 3
      ON CONFLICT (day, plant_id, cause) DO UPDATE SET reports = r.reports + excluded.reports, terminals = r.terminals + excluded.terminals,
        terminals_squared = r.terminals_squared + excluded.terminals_squared, terminals_largest = greatest(r.terminals_largest, excluded.terminals_largest),
        booked = r.booked + excluded.booked, booked_squared = r.booked_squared + excluded.booked_squared,
        booked_largest = greatest(r.booked_largest, excluded.booked_largest), estimate = r.estimate + excluded.estimate,
        estimate_squared = r.estimate_squared + excluded.estimate_squared, estimate_largest = greatest(r.estimate_largest, excluded.estimate_largest),
        total_squared = r.total_squared + excluded.total_squared, total_largest = greatest(r.total_largest, excluded.total_largest),
        without_cost = r.without_cost + excluded.without_cost, escaped = r.escaped + excluded.escaped, outside = r.outside + excluded.outside,
        no_origin = r.no_origin + excluded.no_origin, no_evidence = r.no_evidence + excluded.no_evidence
    ), by_week AS (
      INSERT INTO failure_by_week AS r
      SELECT c.week, c.plant_id, coalesce(c.origin, 0), c.found, c.passed_two, sum(c.sign),
        sum(c.sign * c.terminals), sum(c.terminals_squared), coalesce(max(c.terminals) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.booked),
        sum(c.booked_squared), coalesce(max(greatest(c.booked, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.estimate), sum(c.total_squared),
        coalesce(max(greatest(c.booked + c.estimate, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.without_cost), sum(c.sign * c.standard),
        sum(c.sign * c.priced), sum(c.sign * c.log_cost), sum(c.log_cost::numeric * (c.sign * c.log_cost)), sum(c.sign * coalesce(c.late, 0)),
        sum(c.sign * c.avoidable), sum(c.sign * c.no_cause), sum(c.sign * coalesce(c.sorted_without_origin, 0)),
        sum(c.sign * coalesce(c.late_without_cost, 0)), sum(c.sign * coalesce(c.late_without_standard, 0))
      FROM changed c GROUP BY 1, 2, 3, 4, 5 ORDER BY 1, 2, 3, 4, 5
      ON CONFLICT (week, plant_id, origin, found, passed_two) DO UPDATE SET reports = r.reports + excluded.reports,
        terminals = r.terminals + excluded.terminals, terminals_squared = r.terminals_squared + excluded.terminals_squared,
        terminals_largest = greatest(r.terminals_largest, excluded.terminals_largest), booked = r.booked + excluded.booked,
        booked_squared = r.booked_squared + excluded.booked_squared, booked_largest = greatest(r.booked_largest, excluded.booked_largest),
        estimate = r.estimate + excluded.estimate, total_squared = r.total_squared + excluded.total_squared,
        total_largest = greatest(r.total_largest, excluded.total_largest), without_cost = r.without_cost + excluded.without_cost,
        standard = r.standard + excluded.standard, priced = r.priced + excluded.priced, log_cost = r.log_cost + excluded.log_cost,
        log_cost_squared = r.log_cost_squared + excluded.log_cost_squared, late = r.late + excluded.late, avoidable = r.avoidable + excluded.avoidable,
        no_cause = r.no_cause + excluded.no_cause, sorted_without_origin = r.sorted_without_origin + excluded.sorted_without_origin,
        late_without_cost = r.late_without_cost + excluded.late_without_cost,
        late_without_standard = r.late_without_standard + excluded.late_without_standard
    )
    INSERT INTO failure_by_month AS r
    {months} ORDER BY 1, 2, 3, 4
    ON CONFLICT (dimension, month, plant_id, key) DO UPDATE SET reports = r.reports + excluded.reports, terminals = r.terminals + excluded.terminals,
      terminals_squared = r.terminals_squared + excluded.terminals_squared, terminals_largest = greatest(r.terminals_largest, excluded.terminals_largest),
      booked = r.booked + excluded.booked, booked_squared = r.booked_squared + excluded.booked_squared,
      booked_largest = greatest(r.booked_largest, excluded.booked_largest), estimate = r.estimate + excluded.estimate,
      total_squared = r.total_squared + excluded.total_squared, total_largest = greatest(r.total_largest, excluded.total_largest),
      without_cost = r.without_cost + excluded.without_cost;
  $sql$;
  -- Each part by itself: grouped apart, the parts cost a third of grouping them together.
  months text := (SELECT string_agg(format($sql$
    SELECT %L, c.month, c.plant_id, coalesce(c.%I, '00000000-0000-0000-0000-000000000000'), sum(c.sign), sum(c.sign * c.terminals),
      sum(c.terminals_squared), coalesce(max(c.terminals) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.booked), sum(c.booked_squared),
      coalesce(max(greatest(c.booked, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.estimate), sum(c.total_squared),
      coalesce(max(greatest(c.booked + c.estimate, 0)) FILTER (WHERE c.sign = 1), 0), sum(c.sign * c.without_cost)
    FROM changed c GROUP BY c.month, c.plant_id, c.%I$sql$, part, part || '_id', part || '_id'), ' UNION ALL ')
    FROM unnest(ARRAY['line', 'housing', 'terminal', 'tool']) part);
  -- A sum can be taken back, a maximum cannot: where the largest may have left a cell, it is looked up among what remains.
  mend text := $sql$
    UPDATE failure_by_day r SET (terminals_largest, booked_largest, estimate_largest, total_largest) = (
      SELECT coalesce(max(f.terminals), 0), coalesce(max(greatest(f.booked, 0)), 0), coalesce(max(greatest(f.estimate, 0)), 0),
        coalesce(max(greatest(f.booked + f.estimate, 0)), 0)
      FROM failure_cell f WHERE f.plant_id = r.plant_id AND f.found_on = r.day AND coalesce(f.cause::text, 'none') = r.cause)
    FROM (SELECT c.found_on, c.plant_id, coalesce(c.cause::text, 'none') AS cause, max(c.terminals) AS terminals, max(c.booked) AS booked,
        max(c.estimate) AS estimate, max(c.booked + c.estimate) AS total FROM ({removed}) c GROUP BY 1, 2, 3) o
    WHERE r.day = o.found_on AND r.plant_id = o.plant_id AND r.cause = o.cause AND r.reports > 0
      AND (r.terminals_largest > 1 AND o.terminals >= r.terminals_largest OR r.booked_largest > 0 AND o.booked >= r.booked_largest
        OR r.estimate_largest > 0 AND o.estimate >= r.estimate_largest OR r.total_largest > 0 AND o.total >= r.total_largest);
    DELETE FROM failure_by_day r USING ({removed}) o
    WHERE r.day = o.found_on AND r.plant_id = o.plant_id AND r.cause = coalesce(o.cause::text, 'none') AND r.reports = 0;

    UPDATE failure_by_week r SET (terminals_largest, booked_largest, total_largest) = (
      SELECT coalesce(max(f.terminals), 0), coalesce(max(greatest(f.booked, 0)), 0), coalesce(max(greatest(f.booked + f.estimate, 0)), 0)
      FROM failure_cell f WHERE f.plant_id = r.plant_id AND f.found_on >= r.week AND f.found_on < r.week + 7
        AND coalesce(f.origin, 0) = r.origin AND f.found = r.found AND f.passed_two = r.passed_two)
    FROM (SELECT c.found_on - (c.found_on - date '1990-01-01') % 7 AS week, c.plant_id, coalesce(c.origin, 0) AS origin, c.found, c.passed_two,
        max(c.terminals) AS terminals, max(c.booked) AS booked, max(c.booked + c.estimate) AS total FROM ({removed}) c GROUP BY 1, 2, 3, 4, 5) o
    WHERE r.week = o.week AND r.plant_id = o.plant_id AND r.origin = o.origin AND r.found = o.found AND r.passed_two = o.passed_two AND r.reports > 0
      AND (r.terminals_largest > 1 AND o.terminals >= r.terminals_largest OR r.booked_largest > 0 AND o.booked >= r.booked_largest
        OR r.total_largest > 0 AND o.total >= r.total_largest);
    DELETE FROM failure_by_week r USING ({removed}) o
    WHERE r.week = o.found_on - (o.found_on - date '1990-01-01') % 7 AND r.plant_id = o.plant_id AND r.origin = coalesce(o.origin, 0)
      AND r.found = o.found AND r.passed_two = o.passed_two AND r.reports = 0;

    UPDATE failure_by_month r SET (terminals_largest, booked_largest, total_largest) = (
      SELECT coalesce(max(f.terminals), 0), coalesce(max(greatest(f.booked, 0)), 0), coalesce(max(greatest(f.booked + f.estimate, 0)), 0)
      FROM failure_cell f WHERE f.plant_id = r.plant_id AND f.found_on >= r.month AND f.found_on < (r.month + interval '1 month')::date
        AND CASE r.dimension WHEN 'line' THEN f.line_id WHEN 'housing' THEN f.housing_id WHEN 'terminal' THEN f.terminal_id ELSE f.tool_id END
          IS NOT DISTINCT FROM nullif(r.key, '00000000-0000-0000-0000-000000000000'))
    FROM (SELECT k.dimension, date_trunc('month', c.found_on::timestamp)::date AS month, c.plant_id,
        coalesce(k.key, '00000000-0000-0000-0000-000000000000') AS key, max(c.terminals) AS terminals, max(c.booked) AS booked,
        max(c.booked + c.estimate) AS total
      FROM ({removed}) c CROSS JOIN LATERAL (VALUES ('line', c.line_id), ('housing', c.housing_id), ('terminal', c.terminal_id), ('tool', c.tool_id)) k (dimension, key)
      GROUP BY 1, 2, 3, 4) o
    WHERE r.dimension = o.dimension AND r.month = o.month AND r.plant_id = o.plant_id AND r.key = o.key AND r.reports > 0
      AND (r.terminals_largest > 1 AND o.terminals >= r.terminals_largest OR r.booked_largest > 0 AND o.booked >= r.booked_largest
        OR r.total_largest > 0 AND o.total >= r.total_largest);
    DELETE FROM failure_by_month r USING ({removed}) o
      CROSS JOIN LATERAL (VALUES ('line', o.line_id), ('housing', o.housing_id), ('terminal', o.terminal_id), ('tool', o.tool_id)) k (dimension, key)
    WHERE r.dimension = k.dimension AND r.month = date_trunc('month', o.found_on::timestamp)::date AND r.plant_id = o.plant_id
      AND r.key = coalesce(k.key, '00000000-0000-0000-0000-000000000000') AND r.reports = 0;
  $sql$;
  really_added text := added || ' EXCEPT ALL ' || removed;
  really_removed text := removed || ' EXCEPT ALL ' || added;
BEGIN
  apply := replace(apply, '{months}', months);
  EXECUTE format('CREATE FUNCTION failure_rollup_insert() RETURNS trigger LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN ' || replace(apply, '{changed}', 'SELECT 1 AS sign, a.* FROM (' || added || ') a') || ' RETURN NULL; END');
  EXECUTE format('CREATE FUNCTION failure_rollup_update() RETURNS trigger LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN IF NOT EXISTS (' || really_removed || ') AND NOT EXISTS (' || really_added || ') THEN RETURN NULL; END IF; '
    || replace(apply, '{changed}', 'SELECT -1 AS sign, a.* FROM (' || really_removed || ') a UNION ALL SELECT 1, a.* FROM (' || really_added || ') a')
    || replace(mend, '{removed}', really_removed) || ' RETURN NULL; END');
  EXECUTE format('CREATE FUNCTION failure_rollup_delete() RETURNS trigger LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN ' || replace(apply, '{changed}', 'SELECT -1 AS sign, a.* FROM (' || removed || ') a') || replace(mend, '{removed}', removed)
    || ' RETURN NULL; END');
  EXECUTE format('CREATE FUNCTION rebuild_failure_rollups() RETURNS void LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN TRUNCATE failure_by_day, failure_by_week, failure_by_month; ' || replace(apply, '{changed}', 'SELECT 1 AS sign, a.* FROM failure_cell a') || ' END');
END $make$;

CREATE FUNCTION failure_rollup_truncate() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  TRUNCATE failure_by_day, failure_by_week, failure_by_month;
  RETURN NULL;
END $$;
CREATE TRIGGER failure_rollup_insert AFTER INSERT ON failure REFERENCING NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION failure_rollup_insert();
CREATE TRIGGER failure_rollup_update AFTER UPDATE ON failure REFERENCING OLD TABLE AS old_rows NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION failure_rollup_update();
CREATE TRIGGER failure_rollup_delete AFTER DELETE ON failure REFERENCING OLD TABLE AS old_rows FOR EACH STATEMENT EXECUTE FUNCTION failure_rollup_delete();
CREATE TRIGGER failure_rollup_truncate AFTER TRUNCATE ON failure FOR EACH STATEMENT EXECUTE FUNCTION failure_rollup_truncate();

DO $make$
DECLARE
  apply text := $sql$
    WITH changed AS MATERIALIZED ({changed}), by_day AS (
      INSERT INTO production_by_day AS r
      SELECT c.day, c.plant_id, sum(c.sign), sum(c.sign * c.units), sum(c.sign * c.terminals) FROM changed c GROUP BY 1, 2 ORDER BY 1, 2
      ON CONFLICT (day, plant_id) DO UPDATE SET reported = r.reported + excluded.reported, units = r.units + excluded.units,
        terminals = r.terminals + excluded.terminals
    )
    INSERT INTO production_by_month AS r
    {months} ORDER BY 1, 2, 3, 4
    ON CONFLICT (dimension, month, plant_id, key) DO UPDATE SET reported = r.reported + excluded.reported, units = r.units + excluded.units,
      terminals = r.terminals + excluded.terminals;
  $sql$;
  months text := (SELECT string_agg(format($sql$
    SELECT %L, date_trunc('month', c.day::timestamp)::date AS month, c.plant_id, coalesce(c.%I, '00000000-0000-0000-0000-000000000000'), sum(c.sign),
      sum(c.sign * c.units), sum(c.sign * c.terminals)
    FROM changed c GROUP BY 2, c.plant_id, c.%I$sql$, part, part || '_id', part || '_id'), ' UNION ALL ')
    FROM unnest(ARRAY['line', 'housing', 'terminal']) part);
  swept text := $sql$
    DELETE FROM production_by_day r USING old_rows o WHERE r.day = o.day AND r.plant_id = o.plant_id AND r.reported = 0;
    DELETE FROM production_by_month r USING old_rows o
      CROSS JOIN LATERAL (VALUES ('line', o.line_id), ('housing', o.housing_id), ('terminal', o.terminal_id)) k (dimension, key)
    WHERE r.dimension = k.dimension AND r.month = date_trunc('month', o.day::timestamp)::date AND r.plant_id = o.plant_id
      AND r.key = coalesce(k.key, '00000000-0000-0000-0000-000000000000') AND r.reported = 0;
  $sql$;
  added text := 'SELECT 1 AS sign, a.* FROM new_rows a';
  removed text := 'SELECT -1 AS sign, a.* FROM old_rows a';
BEGIN
  apply := replace(apply, '{months}', months);
  EXECUTE format('CREATE FUNCTION production_rollup_insert() RETURNS trigger LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN ' || replace(apply, '{changed}', added) || ' RETURN NULL; END');
  EXECUTE format('CREATE FUNCTION production_rollup_update() RETURNS trigger LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN ' || replace(apply, '{changed}', removed || ' UNION ALL ' || added) || swept || ' RETURN NULL; END');
  EXECUTE format('CREATE FUNCTION production_rollup_delete() RETURNS trigger LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN ' || replace(apply, '{changed}', removed) || swept || ' RETURN NULL; END');
  EXECUTE format('CREATE FUNCTION rebuild_production_rollups() RETURNS void LANGUAGE plpgsql AS %L',
    E'#variable_conflict use_column\nBEGIN TRUNCATE production_by_day, production_by_month; ' || replace(apply, '{changed}', 'SELECT 1 AS sign, a.* FROM production a') || ' END');
END $make$;

CREATE FUNCTION production_rollup_truncate() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  TRUNCATE production_by_day, production_by_month;
  RETURN NULL;
END $$;
CREATE TRIGGER production_rollup_insert AFTER INSERT ON production REFERENCING NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION production_rollup_insert();
CREATE TRIGGER production_rollup_update AFTER UPDATE ON production REFERENCING OLD TABLE AS old_rows NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION production_rollup_update();
CREATE TRIGGER production_rollup_delete AFTER DELETE ON production REFERENCING OLD TABLE AS old_rows FOR EACH STATEMENT EXECUTE FUNCTION production_rollup_delete();
CREATE TRIGGER production_rollup_truncate AFTER TRUNCATE ON production FOR EACH STATEMENT EXECUTE FUNCTION production_rollup_truncate();

-- What needs a decision, however old it is.
CREATE INDEX failure_open_safety ON failure (found_on, plant_id) WHERE voided_at IS NULL AND cause IS NULL AND (safety) IS TRUE;
CREATE INDEX failure_open_outside ON failure (found_on, plant_id) WHERE voided_at IS NULL AND cause IS NULL AND source IN ('customer', 'field');
CREATE INDEX failure_open_costly ON failure (found_on, plant_id) WHERE voided_at IS NULL AND cause IS NULL AND booked_minor <> 0;
CREATE INDEX failure_open_disposition ON failure (found_on, plant_id) WHERE voided_at IS NULL AND disposition = 'pending';

SELECT rebuild_failure_rollups();
SELECT rebuild_production_rollups();
