-- What an imported row is known by, so that repeating a file adds nothing: its content as read (import_hash) and, where the
-- sender gives no number of his own, the row itself (import_key).
ALTER TABLE failure ADD COLUMN import_key uuid, ADD COLUMN import_hash uuid;
CREATE UNIQUE INDEX failure_import_key ON failure (plant_id, import_key) WHERE import_key IS NOT NULL;
