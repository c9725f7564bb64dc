-- How often each cause was decided on by plant alone, so that the base rates of a report read its part's rows and a few totals
-- instead of the tallies of every part of every plant. Kept by the trigger that keeps the tallies.
CREATE TABLE cause_total (
  plant_id uuid NOT NULL,
  cause cause NOT NULL,
  reports int NOT NULL,
  PRIMARY KEY (plant_id, cause)
);
CREATE OR REPLACE FUNCTION tally_causes() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE nowhere constant uuid := '00000000-0000-0000-0000-000000000000';
BEGIN
  IF TG_OP = 'INSERT' THEN
    INSERT INTO cause_tally AS t
    SELECT n.plant_id, coalesce(n.housing_id, nowhere), n.cause, count(*) FROM new_rows n
    WHERE n.cause IS NOT NULL AND n.voided_at IS NULL GROUP BY 1, 2, 3 ORDER BY 1, 2, 3
    ON CONFLICT (plant_id, housing_id, cause) DO UPDATE SET reports = t.reports + excluded.reports;
    INSERT INTO cause_total AS t
    SELECT n.plant_id, n.cause, count(*) FROM new_rows n
    WHERE n.cause IS NOT NULL AND n.voided_at IS NULL GROUP BY 1, 2 ORDER BY 1, 2
    ON CONFLICT (plant_id, cause) DO UPDATE SET reports = t.reports + excluded.reports;
  ELSE
    INSERT INTO cause_tally AS t
    SELECT plant_id, coalesce(housing_id, nowhere), cause, sum(step) FROM (
      SELECT n.plant_id, n.housing_id, n.cause, 1 AS step FROM new_rows n WHERE n.cause IS NOT NULL AND n.voided_at IS NULL
      UNION ALL
      SELECT o.plant_id, o.housing_id, o.cause, -1 FROM old_rows o WHERE o.cause IS NOT NULL AND o.voided_at IS NULL
    ) moved GROUP BY 1, 2, 3 HAVING sum(step) <> 0 ORDER BY 1, 2, 3
    ON CONFLICT (plant_id, housing_id, cause) DO UPDATE SET reports = t.reports + excluded.reports;
    INSERT INTO cause_total AS t
    SELECT plant_id, cause, sum(step) FROM (
      SELECT n.plant_id, n.cause, 1 AS step FROM new_rows n WHERE n.cause IS NOT NULL AND n.voided_at IS NULL
      UNION ALL
      SELECT o.plant_id, o.cause, -1 FROM old_rows o WHERE o.cause IS NOT NULL AND o.voided_at IS NULL
    ) moved GROUP BY 1, 2 HAVING sum(step) <> 0 ORDER BY 1, 2
    ON CONFLICT (plant_id, cause) DO UPDATE SET reports = t.reports + excluded.reports;
  END IF;
  RETURN NULL;
END $$;
INSERT INTO cause_total SELECT t.plant_id, t.cause, sum(t.reports) FROM cause_tally t GROUP BY 1, 2;
