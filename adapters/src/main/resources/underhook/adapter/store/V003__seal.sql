CREATE TABLE seal (
    number INTEGER PRIMARY KEY,
    kind TEXT NOT NULL,
    subject TEXT NOT NULL,
    who TEXT NOT NULL,
    at TEXT NOT NULL,
    hash TEXT NOT NULL,
    UNIQUE (kind, subject)
);
