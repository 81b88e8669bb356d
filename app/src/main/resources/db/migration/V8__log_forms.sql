-- What a person corrected in the log of some logger, a line each, for the next log of its form.
create table log_form (
  shape varchar(1000) primary key,
  corrections text not null,
  told_ms bigint not null
);
