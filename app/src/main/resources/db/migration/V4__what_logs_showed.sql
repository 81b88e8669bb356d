-- What went wrong in a firing by its log, and what its display could not have shown: a sentence a line.
alter table firing_log add column happened text not null default '';
alter table firing_log add column not_shown text not null default '';
