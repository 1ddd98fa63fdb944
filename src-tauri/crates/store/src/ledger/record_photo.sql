INSERT INTO photo (id, format, width, height, bytes, taken_in)
VALUES (?1, ?2, ?3, ?4, ?5, ?6)
ON CONFLICT DO NOTHING
