CREATE TABLE job (
    only INTEGER PRIMARY KEY CHECK (only = 1),
    name TEXT NOT NULL,
    head INTEGER NOT NULL,
    tip INTEGER NOT NULL
);
CREATE TABLE content (
    hash TEXT PRIMARY KEY,
    bytes BLOB NOT NULL
) WITHOUT ROWID;
CREATE TABLE revision (
    id INTEGER PRIMARY KEY,
    parent INTEGER NOT NULL,
    at TEXT NOT NULL,
    what TEXT NOT NULL
);
CREATE TABLE revision_file (
    revision INTEGER NOT NULL REFERENCES revision (id),
    path TEXT NOT NULL,
    hash TEXT NOT NULL REFERENCES content (hash),
    PRIMARY KEY (revision, path)
) WITHOUT ROWID;
CREATE TABLE plan (
    number INTEGER PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    revision INTEGER NOT NULL REFERENCES revision (id),
    at TEXT NOT NULL
);
CREATE TABLE plan_file (
    plan TEXT NOT NULL REFERENCES plan (id),
    name TEXT NOT NULL,
    hash TEXT NOT NULL REFERENCES content (hash),
    PRIMARY KEY (plan, name)
) WITHOUT ROWID;
