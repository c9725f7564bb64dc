-- Outgoing mail, written in the transaction of what it tells and sent by a job afterwards.
CREATE TYPE mail_state AS ENUM ('waiting', 'sent', 'given_up');
CREATE TABLE mail (
  id uuid PRIMARY KEY,
  key text NOT NULL UNIQUE, -- what it tells whom: the same is queued once
  recipient text NOT NULL,
  subject text NOT NULL,
  body text NOT NULL,
  link text, -- page of the dashboard it is about
  locale text NOT NULL,
  queued_at timestamptz NOT NULL,
  state mail_state NOT NULL DEFAULT 'waiting',
  tries int NOT NULL DEFAULT 0,
  next_try_at timestamptz NOT NULL,
  last_error text,
  settled_at timestamptz
);
CREATE INDEX mail_waiting ON mail (next_try_at, id) WHERE state = 'waiting';
CREATE INDEX mail_newest ON mail (id DESC);

-- What a person is told inside the product. The words are made from kind and facts when it is read, in the reader's language.
CREATE TABLE notice (
  id uuid PRIMARY KEY,
  person_id uuid NOT NULL REFERENCES person (id),
  plant_id uuid REFERENCES plant (id),
  kind text NOT NULL,
  key text NOT NULL,
  facts jsonb NOT NULL,
  link text NOT NULL,
  at timestamptz NOT NULL,
  read_at timestamptz,
  UNIQUE (person_id, key)
);
CREATE INDEX notice_newest ON notice (person_id, id DESC);
CREATE INDEX notice_unread ON notice (person_id) WHERE read_at IS NULL;

CREATE TABLE notice_preference (
  person_id uuid PRIMARY KEY REFERENCES person (id),
  mail boolean NOT NULL
);

-- The secret address under which a person's calendar program reads their due dates.
CREATE TABLE calendar_feed (
  person_id uuid PRIMARY KEY REFERENCES person (id),
  secret_hash text NOT NULL UNIQUE,
  created_at timestamptz NOT NULL
);
