-- Logs of a kiln's firings, with what ran and what was so that day, as text. Dates are ISO 8601.
-- part: what the log has had in what was learned: new, taught, odd (left out by the fit), aside (by a person).
create table firing_log (
  id varchar(36) primary key,
  kiln_id varchar(36) not null references document (id),
  name varchar(200) not null,
  fired_on varchar(10) not null,
  csv text not null,
  schedule text not null,
  firing text not null,
  part varchar(8) not null,
  missed_kelvins double precision,
  added_ms bigint not null
);
create index firing_log_kiln on firing_log (kiln_id, fired_on);
