-- The book of records. A firing keeps the texts it was planned from, so that it can be read as it was
-- when they have changed. What happened in it is a list that only grows: a line that was wrong is
-- taken back, not deleted; so is a firing.
create table firing (
  id varchar(36) primary key,
  job varchar(200) not null,
  kind varchar(16) not null,
  kiln varchar(200) not null,
  keypad varchar(200) not null,
  slot integer not null,
  plan text not null,
  work_text text not null,
  kiln_text text not null,
  keypad_text text not null,
  planned text not null,
  press_ms bigint not null,
  made_ms bigint not null,
  removed_ms bigint
);
create index firing_press on firing (press_ms);

-- at_ms: when it happened; told_ms: when somebody told it. celsius: what the display said.
create table firing_event (
  id varchar(36) primary key,
  firing_id varchar(36) not null references firing (id),
  turn bigint not null,
  kind varchar(16) not null,
  at_ms bigint not null,
  celsius double precision,
  body text not null,
  told_ms bigint not null,
  taken_back_ms bigint,
  constraint firing_event_turn unique (firing_id, turn)
);

create table firing_photo (
  event_id varchar(36) primary key references firing_event (id),
  media_type varchar(40) not null,
  picture ${binary} not null
);
