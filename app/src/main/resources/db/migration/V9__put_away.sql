-- What is put away keeps its row and can be put back: nothing is deleted. While a text is away its name is free
-- for another: name then holds its id, away_name what it was called, and its kind ends in " away", so that nothing
-- that asks for a kind finds it.
alter table document add column away_name varchar(200);
alter table document add column removed_ms bigint;
alter table card add column removed_ms bigint;
alter table firing_log add column removed_ms bigint;
-- What somebody answered who sets up their studio (topic start) or describes a keypad (topic keypad), as it was typed,
-- until it is done.
create table kept_answer (
  topic varchar(16) not null,
  field varchar(60) not null,
  answer varchar(300) not null,
  told_ms bigint not null,
  primary key (topic, field)
);
