-- Whether a tool has run its service interval since its last service; lists and the week's count ask for it.
ALTER TABLE tool ADD COLUMN due boolean NOT NULL GENERATED ALWAYS AS (coalesce(cycle_count - serviced_at_count >= service_interval, false)) STORED;
