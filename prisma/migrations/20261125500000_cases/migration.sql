-- Documents for a customer: `locale` is their language, `paper` their sheet.
ALTER TABLE customer ADD COLUMN paper text NOT NULL DEFAULT 'A4' CHECK (paper IN ('A4', 'Letter'));

-- 8D cases. What the team writes lies in parts, each with a version of its own, so that two people at work on one case lose nothing.
CREATE TYPE case_state AS ENUM ('open', 'closed', 'dropped');
CREATE TABLE eight_d_case (
  id uuid PRIMARY KEY,
  plant_id uuid NOT NULL REFERENCES plant (id),
  number text NOT NULL,
  title text NOT NULL,
  state case_state NOT NULL DEFAULT 'open',
  safety boolean NOT NULL DEFAULT false,
  customer_id uuid REFERENCES customer (id),
  housing_id uuid REFERENCES housing (id),
  terminal_id uuid REFERENCES terminal (id),
  cause cause,
  sub_cause text,
  escape_stage smallint,
  opened_at timestamptz NOT NULL,
  opened_by uuid,
  opened_by_name text NOT NULL,
  closed_at timestamptz,
  drop_reason text,
  version int NOT NULL DEFAULT 1,
  UNIQUE (plant_id, number)
);
CREATE INDEX eight_d_case_newest ON eight_d_case (plant_id, id DESC);
CREATE TABLE eight_d_counter (
  plant_id uuid NOT NULL,
  year smallint NOT NULL,
  last int NOT NULL,
  PRIMARY KEY (plant_id, year)
);

CREATE TABLE eight_d_case_report (
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  plant_id uuid NOT NULL,
  failure_id uuid NOT NULL,
  PRIMARY KEY (case_id, failure_id),
  FOREIGN KEY (failure_id, plant_id) REFERENCES failure (id, plant_id)
);
CREATE INDEX eight_d_case_report_failure ON eight_d_case_report (plant_id, failure_id);
CREATE TABLE eight_d_case_complaint (
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  complaint_id uuid NOT NULL REFERENCES complaint (id),
  PRIMARY KEY (case_id, complaint_id)
);
CREATE INDEX eight_d_case_complaint_complaint ON eight_d_case_complaint (complaint_id);

CREATE TABLE eight_d_part (
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  part text NOT NULL,
  content jsonb NOT NULL,
  version int NOT NULL,
  changed_at timestamptz NOT NULL,
  changed_by text NOT NULL,
  PRIMARY KEY (case_id, part)
);
-- A signature stays when it is voided; only one holds for a discipline and role.
CREATE TABLE eight_d_signature (
  id uuid PRIMARY KEY,
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  discipline smallint NOT NULL CHECK (discipline BETWEEN 0 AND 8),
  role text NOT NULL,
  signed_by uuid NOT NULL,
  signer text NOT NULL,
  signed_at timestamptz NOT NULL,
  voided_at timestamptz,
  voided_by text,
  void_reason text
);
CREATE UNIQUE INDEX eight_d_signature_holds ON eight_d_signature (case_id, discipline, role) WHERE voided_at IS NULL;
CREATE TABLE eight_d_comment (
  id uuid PRIMARY KEY,
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  discipline smallint NOT NULL CHECK (discipline BETWEEN 0 AND 8),
  text text NOT NULL,
  author_id uuid NOT NULL,
  author text NOT NULL,
  at timestamptz NOT NULL
);
CREATE INDEX eight_d_comment_case ON eight_d_comment (case_id, id);
CREATE TABLE eight_d_attachment (
  id uuid PRIMARY KEY,
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  discipline smallint NOT NULL CHECK (discipline BETWEEN 0 AND 8),
  file text NOT NULL,
  name text NOT NULL,
  media_type text NOT NULL,
  bytes int NOT NULL,
  width int,
  height int,
  caption text,
  added_at timestamptz NOT NULL,
  added_by text NOT NULL,
  removed_at timestamptz
);
CREATE INDEX eight_d_attachment_case ON eight_d_attachment (case_id, id);
-- What was given out, exactly as it was: the file lies under the hash of its content.
CREATE TABLE eight_d_document (
  id uuid PRIMARY KEY,
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  revision int NOT NULL,
  format text NOT NULL CHECK (format IN ('pdf', 'docx')),
  locale text NOT NULL,
  paper text NOT NULL,
  selection jsonb NOT NULL,
  sha256 text NOT NULL,
  bytes int NOT NULL,
  recipient text NOT NULL,
  note text,
  kept_at timestamptz NOT NULL,
  kept_by text NOT NULL,
  UNIQUE (case_id, revision)
);

-- What a plant is asked when a case of another is closed; it sees these words and nothing else of the case.
CREATE TYPE read_across_answer AS ENUM ('applies', 'does_not_apply');
CREATE TABLE read_across (
  id uuid PRIMARY KEY,
  case_id uuid NOT NULL REFERENCES eight_d_case (id),
  plant_id uuid NOT NULL REFERENCES plant (id),
  why text[] NOT NULL,
  title text NOT NULL,
  problem text NOT NULL,
  root_cause text NOT NULL,
  check_text text NOT NULL,
  asked_at timestamptz NOT NULL,
  withdrawn_at timestamptz,
  answer read_across_answer,
  answer_text text,
  answered_at timestamptz,
  answered_by text,
  action_id uuid,
  version int NOT NULL DEFAULT 1
);
CREATE UNIQUE INDEX read_across_asked ON read_across (case_id, plant_id) WHERE withdrawn_at IS NULL;
CREATE INDEX read_across_open ON read_across (plant_id, id DESC);

CREATE TABLE lesson (
  id uuid PRIMARY KEY,
  case_id uuid NOT NULL UNIQUE REFERENCES eight_d_case (id),
  plant_id uuid NOT NULL REFERENCES plant (id),
  title text NOT NULL,
  problem text NOT NULL,
  root_cause text NOT NULL,
  check_text text NOT NULL,
  cause cause NOT NULL,
  sub_cause text,
  effects text[] NOT NULL DEFAULT '{}',
  housing_ids uuid[] NOT NULL DEFAULT '{}',
  terminal_ids uuid[] NOT NULL DEFAULT '{}',
  tool_types text[] NOT NULL DEFAULT '{}',
  published_at timestamptz NOT NULL,
  withdrawn_at timestamptz,
  search tsvector GENERATED ALWAYS AS (
    setweight(to_tsvector('simple', title), 'A') ||
    setweight(to_tsvector('simple', check_text), 'B') ||
    setweight(to_tsvector('simple', problem || ' ' || root_cause), 'C')
  ) STORED
);
CREATE INDEX lesson_search ON lesson USING gin (search);
CREATE INDEX lesson_newest ON lesson (id DESC) WHERE withdrawn_at IS NULL;
