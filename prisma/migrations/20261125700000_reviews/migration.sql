-- The sheet that a plant prints on.
ALTER TABLE plant ADD COLUMN paper text NOT NULL DEFAULT 'A4' CHECK (paper IN ('A4', 'Letter'));

-- The weekly review of one plant, several, or the group. `content` is the page in a language-neutral form, `hash` its SHA-256.
-- While open, its figures may be renewed; once closed, nothing of it changes: a correction is a new edition.
CREATE TABLE review (
  id uuid PRIMARY KEY,
  scope text NOT NULL, -- 'group', or the plants' ids (of many, a digest): one review a scope, week and edition
  plant_ids uuid[] NOT NULL CHECK (cardinality(plant_ids) > 0),
  week_from date NOT NULL,
  edition int NOT NULL DEFAULT 1 CHECK (edition > 0),
  reason text CHECK ((edition = 1) = (reason IS NULL)), -- why the edition before was corrected
  content text NOT NULL,
  hash text NOT NULL,
  figures_at timestamptz NOT NULL,
  opened_at timestamptz NOT NULL,
  opened_by text, -- null: prepared by the clock
  closed_at timestamptz,
  closed_by text,
  version int NOT NULL DEFAULT 1,
  UNIQUE (scope, week_from, edition),
  CHECK ((closed_at IS NULL) = (closed_by IS NULL))
);
CREATE INDEX review_newest ON review (week_from DESC, id DESC);
CREATE INDEX review_plants ON review USING gin (plant_ids);
CREATE TRIGGER review_stays BEFORE DELETE ON review FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER closed_review_is_final BEFORE UPDATE ON review FOR EACH ROW WHEN (OLD.closed_at IS NOT NULL) EXECUTE FUNCTION refuse_change();

-- Decisions of a review are the actions that name it.
ALTER TABLE action ADD CONSTRAINT action_review_id_fkey FOREIGN KEY (review_id) REFERENCES review (id);

-- Prepared at its hour and mailed to its subscribers: once a scope and week.
CREATE TABLE review_announcement (
  scope text NOT NULL,
  week_from date NOT NULL,
  review_id uuid NOT NULL REFERENCES review (id),
  at timestamptz NOT NULL,
  PRIMARY KEY (scope, week_from)
);

-- Mail may bring a file, and comes to an account or to a subscriber.
ALTER TABLE mail ADD COLUMN reason text NOT NULL DEFAULT 'account' CHECK (reason IN ('account', 'subscription'));
ALTER TABLE mail ADD COLUMN file_name text;
ALTER TABLE mail ADD COLUMN file bytea;
ALTER TABLE mail ADD CHECK ((file IS NULL) = (file_name IS NULL));

-- Who is sent the review by mail; no plant: that of the group.
CREATE TABLE review_subscription (
  id uuid PRIMARY KEY,
  person_id uuid NOT NULL REFERENCES person (id),
  plant_id uuid REFERENCES plant (id),
  since timestamptz NOT NULL,
  UNIQUE NULLS NOT DISTINCT (person_id, plant_id)
);
