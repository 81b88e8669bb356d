-- What logs of enamelling sessions told of named pieces, one firing a row. log_id stands for the log's text,
-- so that the same log again is judged anew in place of what it told before. in_seconds: in the log, s.
create table piece_firing (
  log_id varchar(36) not null,
  number integer not null,
  piece varchar(200) not null,
  coat integer,
  place text not null,
  log text not null,
  kiln varchar(200) not null,
  metal varchar(40) not null,
  fired_ms bigint,
  in_seconds double precision not null,
  stay_seconds double precision not null,
  working_celsius double precision not null,
  heat_seconds double precision not null,
  hottest_celsius double precision not null,
  look varchar(16) not null,
  kept_ms bigint not null,
  primary key (log_id, number)
);
create index piece_firing_piece on piece_firing (piece, fired_ms);
