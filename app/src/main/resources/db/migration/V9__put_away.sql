-- What is put away keeps its row and can be put back: nothing is deleted. While a text is away its name is free
-- for another: name then holds its id, away_name what it was called, and its kind ends in " away", so that nothing
-- that asks for a kind finds it.
alter table document add column away_name varchar(200);
alter table document add column removed_ms bigint;
alter table card add column removed_ms bigint;
alter table firing_log add column removed_ms bigint;
-- What somebody answered who sets up their studio for the first time, as it was typed.
create table start_answer (
  field varchar(40) primary key,
  answer varchar(200) not null,
  told_ms bigint not null
);
