-- The plant's working time, in which reply clocks run, and who answers there for product safety.
CREATE TABLE plant_calendar (
  plant_id uuid PRIMARY KEY REFERENCES plant (id),
  hours jsonb NOT NULL, -- seven lists of [from, to], Monday first
  version int NOT NULL DEFAULT 1
);
CREATE TABLE plant_holiday (
  plant_id uuid NOT NULL REFERENCES plant (id),
  day date NOT NULL,
  name text NOT NULL,
  PRIMARY KEY (plant_id, day)
);
CREATE TABLE product_safety_duty (
  plant_id uuid PRIMARY KEY REFERENCES plant (id),
  person_id uuid REFERENCES person (id),
  version int NOT NULL DEFAULT 1
);

-- How long a customer gives for each reply. Common practice, no source.
ALTER TABLE customer ADD COLUMN reply_times jsonb NOT NULL DEFAULT
  '{"first_reply":{"amount":1,"unit":"days"},"containment":{"amount":2,"unit":"days"},"cause":{"amount":10,"unit":"days"},"corrective_action":{"amount":20,"unit":"days"}}';

CREATE TYPE clock_kind AS ENUM ('first_reply', 'containment', 'cause', 'corrective_action');
CREATE TYPE time_unit AS ENUM ('hours', 'days');
CREATE TYPE consent_kind AS ENUM ('close', 'unflag');
CREATE TYPE consent_answer AS ENUM ('given', 'refused');
CREATE TYPE clock_step AS ENUM ('paused', 'resumed', 'answered', 'handed_over', 'owner_told', 'managers_told');
CREATE TYPE whereabouts AS ENUM ('in_process', 'stock', 'transit', 'customer', 'field');

CREATE TABLE complaint_counter (
  plant_id uuid NOT NULL REFERENCES plant (id),
  year smallint NOT NULL,
  last int NOT NULL,
  PRIMARY KEY (plant_id, year)
);
CREATE TABLE complaint (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  number text NOT NULL,
  customer_id uuid NOT NULL REFERENCES customer (id),
  customer_ref text,
  customer_part text,
  title text NOT NULL,
  housing_id uuid REFERENCES housing (id),
  terminal_id uuid REFERENCES terminal (id),
  quantity int CHECK (quantity > 0),
  lots text[] NOT NULL DEFAULT '{}',
  serials text[] NOT NULL DEFAULT '{}',
  received_at timestamptz NOT NULL,
  built_on date,
  found_on date,
  effect effect,
  mail_text text,
  safety boolean NOT NULL DEFAULT false,
  safety_seen_at timestamptz,
  safety_seen_by uuid,
  owner_id uuid NOT NULL REFERENCES person (id),
  created_at timestamptz NOT NULL,
  created_by uuid NOT NULL,
  closed_at timestamptz,
  closed_by uuid,
  closing_note text,
  version int NOT NULL DEFAULT 1,
  search text GENERATED ALWAYS AS (lower(title || ' ' || coalesce(customer_ref, '') || ' ' || coalesce(customer_part, '') || ' ' || left(coalesce(mail_text, ''), 2000))) STORED,
  UNIQUE (plant_id, number),
  CHECK ((closed_at IS NULL) = (closing_note IS NULL))
);
CREATE INDEX complaint_open ON complaint (plant_id) WHERE closed_at IS NULL;
CREATE INDEX complaint_newest ON complaint (plant_id, received_at DESC, id DESC);

CREATE TABLE complaint_clock (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL,
  complaint_id uuid NOT NULL REFERENCES complaint (id),
  kind clock_kind NOT NULL,
  amount int NOT NULL CHECK (amount > 0),
  unit time_unit NOT NULL,
  owner_id uuid NOT NULL REFERENCES person (id),
  started_at timestamptz NOT NULL,
  due_at timestamptz NOT NULL,
  short_at timestamptz NOT NULL, -- a quarter of the working time is left: the owner is told
  urgent_at timestamptz NOT NULL, -- a tenth is left: the managers are told
  paused_at timestamptz,
  pause_reason text,
  answered_at timestamptz,
  answered_by uuid,
  sent text,
  told smallint NOT NULL DEFAULT 0,
  version int NOT NULL DEFAULT 1,
  UNIQUE (complaint_id, kind),
  CHECK (paused_at IS NULL OR answered_at IS NULL),
  CHECK ((paused_at IS NULL) = (pause_reason IS NULL)),
  CHECK ((answered_at IS NULL) = (sent IS NULL))
);
CREATE INDEX complaint_clock_running ON complaint_clock (short_at) WHERE answered_at IS NULL AND paused_at IS NULL;
CREATE TABLE complaint_clock_event (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL,
  clock_id uuid NOT NULL REFERENCES complaint_clock (id),
  step clock_step NOT NULL,
  at timestamptz NOT NULL,
  actor text NOT NULL,
  note text
);
CREATE INDEX complaint_clock_event_clock ON complaint_clock_event (clock_id, id);
CREATE TRIGGER complaint_clock_event_is_final BEFORE UPDATE OR DELETE ON complaint_clock_event FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- A second person's word: for closing a safety-relevant complaint, and for taking the flag off.
CREATE TABLE complaint_consent (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL,
  complaint_id uuid NOT NULL REFERENCES complaint (id),
  kind consent_kind NOT NULL,
  reason text NOT NULL,
  asked_by uuid NOT NULL,
  asked_at timestamptz NOT NULL,
  answer consent_answer,
  answered_by uuid,
  answered_at timestamptz,
  note text
);
CREATE UNIQUE INDEX complaint_consent_waiting ON complaint_consent (complaint_id, kind) WHERE answer IS NULL;

-- The failure reports a complaint is made of.
CREATE TABLE complaint_failure (
  complaint_id uuid NOT NULL REFERENCES complaint (id),
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  linked_at timestamptz NOT NULL,
  linked_by uuid NOT NULL,
  PRIMARY KEY (complaint_id, failure_id)
);
CREATE INDEX complaint_failure_report ON complaint_failure (plant_id, failure_id);
CREATE TABLE complaint_photo (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL,
  complaint_id uuid NOT NULL REFERENCES complaint (id),
  file text NOT NULL,
  width int NOT NULL,
  height int NOT NULL,
  bytes int NOT NULL,
  caption text,
  added_at timestamptz NOT NULL,
  added_by uuid,
  removed_at timestamptz
);
CREATE INDEX complaint_photo_complaint ON complaint_photo (complaint_id);

-- Containment: what is suspect, where it is, what sorting found, and from where on parts are good.
CREATE TABLE containment_counter (
  plant_id uuid NOT NULL REFERENCES plant (id),
  year smallint NOT NULL,
  last int NOT NULL,
  PRIMARY KEY (plant_id, year)
);
CREATE TABLE containment (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  number text NOT NULL,
  complaint_id uuid REFERENCES complaint (id),
  case_id uuid,
  title text NOT NULL,
  owner_id uuid NOT NULL REFERENCES person (id),
  housing_ids uuid[] NOT NULL DEFAULT '{}',
  terminal_ids uuid[] NOT NULL DEFAULT '{}',
  line_ids uuid[] NOT NULL DEFAULT '{}',
  tool_ids uuid[] NOT NULL DEFAULT '{}',
  reel_lots text[] NOT NULL DEFAULT '{}',
  housing_lots text[] NOT NULL DEFAULT '{}',
  built_from date NOT NULL,
  built_to date NOT NULL, -- the day after the last one
  suspect_quantity int CHECK (suspect_quantity > 0),
  suspect_basis text,
  clean_from date,
  clean_serial text,
  clean_lot text,
  clean_reason text,
  clean_by uuid,
  clean_at timestamptz,
  created_at timestamptz NOT NULL,
  created_by uuid NOT NULL,
  closed_at timestamptz,
  closed_by uuid,
  closing_note text,
  version int NOT NULL DEFAULT 1,
  UNIQUE (plant_id, number),
  CHECK (built_from < built_to),
  CHECK ((suspect_quantity IS NULL) = (suspect_basis IS NULL)),
  CHECK ((clean_at IS NULL) = (clean_reason IS NULL)),
  CHECK ((closed_at IS NULL) = (closing_note IS NULL))
);
CREATE INDEX containment_complaint ON containment (complaint_id) WHERE complaint_id IS NOT NULL;
CREATE INDEX containment_case ON containment (case_id) WHERE case_id IS NOT NULL;
CREATE INDEX containment_newest ON containment (plant_id, id DESC);
CREATE TABLE containment_place (
  containment_id uuid NOT NULL REFERENCES containment (id),
  plant_id uuid NOT NULL,
  place whereabouts NOT NULL,
  quantity int NOT NULL CHECK (quantity >= 0),
  note text,
  stated_at timestamptz NOT NULL,
  stated_by uuid NOT NULL,
  PRIMARY KEY (containment_id, place)
);
CREATE TABLE containment_sorting (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL,
  containment_id uuid NOT NULL REFERENCES containment (id),
  place whereabouts NOT NULL,
  day date NOT NULL,
  inspected int NOT NULL CHECK (inspected > 0),
  found int NOT NULL CHECK (found >= 0),
  sample boolean NOT NULL,
  note text,
  failure_id uuid,
  sorted_by uuid NOT NULL,
  sorted_at timestamptz NOT NULL,
  withdrawn_at timestamptz,
  withdraw_reason text,
  CHECK (found <= inspected),
  CHECK ((withdrawn_at IS NULL) = (withdraw_reason IS NULL))
);
CREATE INDEX containment_sorting_containment ON containment_sorting (containment_id, id);
CREATE INDEX containment_sorting_report ON containment_sorting (plant_id, failure_id) WHERE failure_id IS NOT NULL;

-- Plants that share the part, the lot or the type of tool, what they were told, and what they answer.
CREATE TABLE containment_alert (
  id uuid PRIMARY KEY,
  containment_id uuid NOT NULL REFERENCES containment (id),
  plant_id uuid NOT NULL REFERENCES plant (id), -- the plant told
  shares text[] NOT NULL,
  told_at timestamptz NOT NULL,
  seen_at timestamptz,
  seen_by uuid,
  affected boolean,
  answer text,
  answered_by uuid,
  answered_at timestamptz,
  version int NOT NULL DEFAULT 1,
  UNIQUE (containment_id, plant_id),
  CHECK ((answered_at IS NULL) = (answer IS NULL))
);
CREATE INDEX containment_alert_plant ON containment_alert (plant_id, told_at DESC);

-- Likeness of words, for past cases that may help.
CREATE EXTENSION IF NOT EXISTS pg_trgm;
