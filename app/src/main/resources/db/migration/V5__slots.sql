-- What was told of the program slots of a kiln's keypad, in the order it was told; nothing is deleted.
-- slot 0 is the whole keypad. A read-back keeps what it rests on: program, keypad as then described,
-- what was shown, how the unit was settled. What it proves is worked out from these each time.
create table slot_event (
  id varchar(36) primary key,
  kiln_id varchar(36) not null references document (id),
  keypad_id varchar(36) not null references document (id),
  turn bigint not null,
  slot integer not null,
  kind varchar(16) not null,
  role varchar(16) not null,
  program text not null,
  keypad text not null,
  shown text not null,
  unit_check text not null,
  note text not null,
  until_day varchar(10),
  good_for_days integer,
  keeps_programs integer,
  told_ms bigint not null,
  constraint slot_event_turn unique (kiln_id, keypad_id, turn)
);
