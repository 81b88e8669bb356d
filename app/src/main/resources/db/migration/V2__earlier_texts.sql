-- A document that is replaced leaves its earlier text behind: history is never overwritten.
create table earlier_text (
  id varchar(36) primary key,
  document_id varchar(36) not null references document (id),
  body text not null,
  kept_ms bigint not null,
  replaced_ms bigint not null
);
create index earlier_text_document on earlier_text (document_id, replaced_ms);
