-- Times are milliseconds since 1970-01-01T00:00Z; ids are UUIDs as text.
create table document (
  id varchar(36) primary key,
  kind varchar(16) not null,
  name varchar(200) not null,
  body text not null,
  created_ms bigint not null,
  changed_ms bigint not null,
  constraint document_kind_name unique (kind, name)
);

create table card (
  id varchar(36) primary key,
  name varchar(200) not null,
  made_from text not null,
  pdf ${binary} not null,
  made_ms bigint not null
);
create index card_made on card (made_ms);
