-- Who took a second opinion upon them: until it is given, the report's cause stays hidden from them.
CREATE TABLE opinion_taken (
  opinion_id uuid NOT NULL,
  person_id uuid NOT NULL,
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  taken_at timestamptz NOT NULL,
  PRIMARY KEY (opinion_id, person_id)
);
CREATE INDEX opinion_taken_person ON opinion_taken (person_id);
CREATE INDEX opinion_taken_failure ON opinion_taken (plant_id, failure_id);
-- The reports whose cause is hidden from a person now.
CREATE VIEW opinion_open AS
SELECT t.person_id, t.plant_id, t.failure_id FROM opinion_taken t
JOIN opinion o ON o.plant_id = t.plant_id AND o.id = t.opinion_id AND o.given_at IS NULL;
