CREATE TYPE action_kind AS ENUM ('containment', 'corrective', 'preventive', 'read_across');
CREATE TYPE action_state AS ENUM ('agreed', 'under_way', 'held_up', 'carried_out', 'verified', 'given_up');
CREATE TYPE action_evidence_kind AS ENUM ('text', 'photo', 'file', 'report');
CREATE TYPE on_recurrence AS ENUM ('reopen', 'tell');
CREATE TYPE effect_verdict AS ENUM ('held', 'not_shown_yet', 'did_not_hold');

CREATE TABLE action (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  number text NOT NULL,
  kind action_kind NOT NULL,
  title text NOT NULL,
  description text,
  owner_id uuid NOT NULL REFERENCES person (id),
  opened_at timestamptz NOT NULL,
  opened_on date NOT NULL,
  opened_by text NOT NULL,
  due_on date NOT NULL,
  effort_hours numeric(8, 2) CHECK (effort_hours >= 0),
  cost_minor bigint CHECK (cost_minor >= 0),
  cost_currency char(3),
  prevention text, -- a prevention option of the trade that it puts in place
  complaint_id uuid REFERENCES complaint (id),
  containment_id uuid REFERENCES containment (id),
  case_id uuid REFERENCES eight_d_case (id),
  review_id uuid,
  state action_state NOT NULL DEFAULT 'agreed',
  state_reason text,
  state_at timestamptz NOT NULL,
  carried_out_on date,
  carried_out_by uuid REFERENCES person (id),
  verified_by uuid REFERENCES person (id),
  verified_on date,
  verification text,
  reopened int NOT NULL DEFAULT 0,
  version int NOT NULL DEFAULT 1,
  UNIQUE (plant_id, number),
  CHECK ((cost_minor IS NULL) = (cost_currency IS NULL)),
  CHECK (state <> 'verified' OR (verified_by IS NOT NULL AND verified_by <> owner_id AND verification IS NOT NULL)),
  CHECK (state NOT IN ('held_up', 'given_up') OR state_reason IS NOT NULL)
);
CREATE INDEX action_due ON action (due_on, id);
CREATE INDEX action_newest ON action (opened_on DESC, id DESC);
CREATE INDEX action_owner ON action (owner_id, due_on, id);
CREATE INDEX action_complaint ON action (complaint_id) WHERE complaint_id IS NOT NULL;
CREATE INDEX action_containment ON action (containment_id) WHERE containment_id IS NOT NULL;
CREATE INDEX action_case ON action (case_id) WHERE case_id IS NOT NULL;
CREATE INDEX action_review ON action (review_id) WHERE review_id IS NOT NULL;

CREATE TABLE action_counter (
  plant_id uuid NOT NULL REFERENCES plant (id),
  year smallint NOT NULL,
  last int NOT NULL,
  PRIMARY KEY (plant_id, year)
);

-- Every change of the state with its reason; never changed afterwards.
CREATE TABLE action_step (
  id uuid PRIMARY KEY,
  action_id uuid NOT NULL REFERENCES action (id),
  at timestamptz NOT NULL,
  actor text NOT NULL,
  state action_state NOT NULL,
  reason text
);
CREATE INDEX action_step_action ON action_step (action_id, id);
CREATE TRIGGER action_step_is_final BEFORE UPDATE OR DELETE ON action_step FOR EACH ROW EXECUTE FUNCTION refuse_change();

CREATE TABLE action_evidence (
  id uuid PRIMARY KEY,
  action_id uuid NOT NULL REFERENCES action (id),
  kind action_evidence_kind NOT NULL,
  text text,
  failure_id uuid,
  file text,
  file_name text,
  bytes int,
  added_at timestamptz NOT NULL,
  added_by text NOT NULL,
  removed_at timestamptz
);
CREATE INDEX action_evidence_action ON action_evidence (action_id, id);

-- What would count as proof, stated before the data came; `planned` holds the figures of that moment.
CREATE TABLE effect_plan (
  action_id uuid PRIMARY KEY REFERENCES action (id),
  cause cause,
  sub_cause text,
  housing_id uuid,
  terminal_id uuid,
  tool_id uuid,
  line_id uuid,
  customer_id uuid,
  sources source[] NOT NULL DEFAULT '{}', -- empty: every source
  before_from date NOT NULL,
  before_to date NOT NULL,
  clean_point date NOT NULL,
  reduction numeric(5, 4) NOT NULL CHECK (reduction > 0 AND reduction <= 1),
  on_recurrence on_recurrence NOT NULL,
  planned jsonb NOT NULL,
  planned_at timestamptz NOT NULL,
  CHECK (before_from < before_to AND before_to <= clean_point),
  CHECK (num_nonnulls(cause, housing_id, terminal_id, tool_id) > 0)
);
-- What the data said at each look; one row a day on which something had changed.
CREATE TABLE effect_look (
  action_id uuid NOT NULL REFERENCES action (id),
  day date NOT NULL,
  at timestamptz NOT NULL,
  failures int NOT NULL,
  exposure double precision,
  verdict effect_verdict NOT NULL,
  judgement jsonb NOT NULL,
  PRIMARY KEY (action_id, day)
);
-- Reports that the action should have prevented; one row a report, so that each is told once.
CREATE TABLE effect_recurrence (
  action_id uuid NOT NULL REFERENCES action (id),
  failure_id uuid NOT NULL,
  seen_at timestamptz NOT NULL,
  reopened boolean NOT NULL,
  PRIMARY KEY (action_id, failure_id)
);
