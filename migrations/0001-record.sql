-- The record, from the first day on. Tables follow core/model; a test holds the two together.
-- Lengths in micrometres, torque in millinewton metres, volumes in millilitres, times in UTC milliseconds.
-- References are checked at the end of each transaction, so that an undo may write rows in any order.

CREATE TABLE meta (
  key TEXT PRIMARY KEY NOT NULL,
  value TEXT NOT NULL
) STRICT;

CREATE TABLE person (
  id TEXT PRIMARY KEY NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('works', 'owns')),
  contact TEXT NOT NULL,
  retired INTEGER NOT NULL CHECK (retired IN (0, 1))
) STRICT;
CREATE TABLE tool (
  id TEXT PRIMARY KEY NOT NULL,
  name TEXT NOT NULL,
  calibrated_until INTEGER,
  retired INTEGER NOT NULL CHECK (retired IN (0, 1))
) STRICT;
CREATE TABLE stow (
  id TEXT PRIMARY KEY NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('bag', 'tin', 'tray', 'shelf')),
  label TEXT NOT NULL,
  place TEXT NOT NULL,
  emptied INTEGER NOT NULL CHECK (emptied IN (0, 1))
) STRICT;
CREATE TABLE original (
  id TEXT PRIMARY KEY NOT NULL,
  bytes INTEGER NOT NULL,
  type TEXT NOT NULL,
  width INTEGER NOT NULL,
  height INTEGER NOT NULL,
  turn INTEGER NOT NULL,
  taken_local TEXT,
  taken_zone TEXT,
  taken_utc INTEGER,
  camera TEXT NOT NULL,
  sharpness REAL,
  phash TEXT,
  has_location INTEGER NOT NULL CHECK (has_location IN (0, 1)),
  gone INTEGER NOT NULL CHECK (gone IN (0, 1)),
  gone_why TEXT NOT NULL
) STRICT;
CREATE TABLE job (
  id TEXT PRIMARY KEY NOT NULL,
  title TEXT NOT NULL,
  machine TEXT NOT NULL,
  owner_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  complaint TEXT NOT NULL,
  cause TEXT NOT NULL,
  correction TEXT NOT NULL,
  side_names TEXT NOT NULL CHECK (json_valid(side_names)),
  earlier_job_id TEXT REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  pattern_job_id TEXT REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  phase TEXT NOT NULL CHECK (phase IN ('open', 'closed', 'signed')),
  recheck_due INTEGER,
  zone TEXT,
  created_at INTEGER NOT NULL
) STRICT;
CREATE INDEX job_owner_id ON job(owner_id);
CREATE INDEX job_earlier_job_id ON job(earlier_job_id);
CREATE INDEX job_pattern_job_id ON job(pattern_job_id);
CREATE TABLE thing (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CHECK (kind IN ('removal', 'part', 'set', 'position', 'connection', 'fluid', 'isolation', 'temporary', 'mark', 'own step', 'measure'))
) STRICT;
CREATE INDEX thing_job ON thing(job_id);
CREATE TABLE as_found (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CHECK (kind IN ('reading', 'damage', 'missing', 'wrong')),
  text TEXT NOT NULL,
  value_typed TEXT,
  closed_why TEXT,
  at INTEGER NOT NULL
) STRICT;
CREATE INDEX as_found_job ON as_found(job_id);
CREATE TABLE ready (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  ord TEXT NOT NULL,
  text TEXT NOT NULL,
  done INTEGER NOT NULL CHECK (done IN (0, 1))
) STRICT;
CREATE INDEX ready_job ON ready(job_id);
CREATE TABLE halt (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  at INTEGER NOT NULL,
  person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  note TEXT NOT NULL,
  seen_at INTEGER,
  seen_by TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX halt_job ON halt(job_id);
CREATE INDEX halt_person_id ON halt(person_id);
CREATE INDEX halt_seen_by ON halt(seen_by);
CREATE TABLE signoff (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  head TEXT NOT NULL,
  person_id TEXT NOT NULL REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  said TEXT NOT NULL,
  at INTEGER NOT NULL
) STRICT;
CREATE INDEX signoff_job ON signoff(job_id);
CREATE INDEX signoff_person_id ON signoff(person_id);
CREATE TABLE removal (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  ord TEXT NOT NULL,
  title TEXT NOT NULL,
  typed TEXT NOT NULL,
  did TEXT NOT NULL CHECK (did IN ('off', 'slackened', 'opened', 'aside', 'safe')),
  bench_part_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  place TEXT NOT NULL,
  side TEXT CHECK (side IN ('left', 'right', 'both')),
  twin_of_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  default_need TEXT NOT NULL CHECK (default_need IN ('assumed', 'confirmed', 'loosened')),
  default_need_why TEXT NOT NULL,
  phase TEXT NOT NULL CHECK (phase IN ('planned', 'under way', 'off', 'given up', 'void')),
  phase_why TEXT NOT NULL,
  held_by TEXT NOT NULL,
  started_at INTEGER,
  ended_at INTEGER,
  pauses TEXT NOT NULL CHECK (json_valid(pauses)),
  zone TEXT,
  person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  note TEXT NOT NULL,
  note_back TEXT NOT NULL,
  caution TEXT NOT NULL
) STRICT;
CREATE INDEX removal_job ON removal(job_id);
CREATE INDEX removal_bench_part_id ON removal(bench_part_id);
CREATE INDEX removal_twin_of_id ON removal(twin_of_id);
CREATE INDEX removal_person_id ON removal(person_id);
CREATE TABLE action (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT NOT NULL REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  ord TEXT NOT NULL,
  what TEXT NOT NULL,
  thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX action_job ON action(job_id);
CREATE INDEX action_removal_id ON action(removal_id);
CREATE INDEX action_thing_id ON action(thing_id);
CREATE TABLE need (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT NOT NULL REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  needs_id TEXT NOT NULL REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  confirmed INTEGER NOT NULL CHECK (confirmed IN (0, 1)),
  why TEXT NOT NULL
) STRICT;
CREATE INDEX need_job ON need(job_id);
CREATE INDEX need_removal_id ON need(removal_id);
CREATE INDEX need_needs_id ON need(needs_id);
CREATE TABLE back_order (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  before_id TEXT NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  after_id TEXT NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  why TEXT NOT NULL
) STRICT;
CREATE INDEX back_order_job ON back_order(job_id);
CREATE INDEX back_order_before_id ON back_order(before_id);
CREATE INDEX back_order_after_id ON back_order(after_id);
CREATE TABLE own_step (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  ord TEXT NOT NULL,
  title TEXT NOT NULL,
  body TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('work', 'recheck')),
  live_energy TEXT CHECK (live_energy IN ('electricity', 'pressure', 'spring', 'load', 'motion', 'ignition', 'fuel', 'heat', 'other'))
) STRICT;
CREATE INDEX own_step_job ON own_step(job_id);
CREATE TABLE part (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  parent_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  kit_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  name TEXT NOT NULL,
  typed TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('part', 'seal', 'gasket', 'o-ring', 'filter', 'sleeve', 'key', 'shim', 'kit', 'new part')),
  qty INTEGER NOT NULL,
  how TEXT NOT NULL CHECK (how IN ('off', 'aside', 'opened', 'fitted new')),
  own_place INTEGER NOT NULL CHECK (own_place IN (0, 1)),
  own_place_text TEXT NOT NULL,
  stamped TEXT NOT NULL,
  hidden INTEGER NOT NULL CHECK (hidden IN (0, 1)),
  stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  condition TEXT NOT NULL,
  fate TEXT NOT NULL CHECK (fate IN ('refit', 'clean and refit', 'renew', 'repair', 'send out', 'exchange', 'carry over', 'leave out', 'undecided')),
  fate_why TEXT NOT NULL,
  carry_to_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  renew TEXT NOT NULL CHECK (renew IN ('no', 'must', 'if worn', 'overridden')),
  renew_rule TEXT,
  renew_why TEXT NOT NULL
) STRICT;
CREATE INDEX part_job ON part(job_id);
CREATE INDEX part_removal_id ON part(removal_id);
CREATE INDEX part_parent_id ON part(parent_id);
CREATE INDEX part_kit_id ON part(kit_id);
CREATE INDEX part_stow_id ON part(stow_id);
CREATE INDEX part_carry_to_id ON part(carry_to_id);
CREATE TABLE away (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  thing_id TEXT NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  to_whom TEXT NOT NULL,
  since INTEGER NOT NULL,
  due INTEGER,
  back_at INTEGER,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX away_job ON away(job_id);
CREATE INDEX away_thing_id ON away(thing_id);
CREATE TABLE spec (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  pool_key TEXT,
  kind TEXT NOT NULL CHECK (kind IN ('bolt', 'screw', 'set screw', 'stud', 'banjo bolt', 'wood screw', 'self-tapping screw', 'nut', 'washer', 'spacer', 'clip', 'push rivet', 'rivet', 'pin', 'split pin', 'roll pin', 'dowel pin', 'taper pin', 'clevis pin', 'R-clip', 'circlip', 'E-clip', 'clamp', 'cable tie', 'key', 'plug', 'other', 'unknown')),
  thread TEXT,
  thread_known INTEGER NOT NULL CHECK (thread_known IN (0, 1)),
  pitch_um INTEGER,
  length_um INTEGER,
  head TEXT,
  drive TEXT,
  drive_size_um INTEGER,
  drive_typed TEXT NOT NULL,
  grade TEXT,
  hand TEXT NOT NULL CHECK (hand IN ('right', 'left')),
  more TEXT NOT NULL
) STRICT;
CREATE INDEX spec_job ON spec(job_id);
CREATE TABLE fset (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT NOT NULL REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  ord TEXT NOT NULL,
  name TEXT NOT NULL,
  typed TEXT NOT NULL,
  spec_id TEXT NOT NULL REFERENCES spec(id) DEFERRABLE INITIALLY DEFERRED,
  side TEXT CHECK (side IN ('left', 'right', 'both')),
  how TEXT NOT NULL CHECK (how IN ('out', 'slackened')),
  count_known INTEGER NOT NULL CHECK (count_known IN (0, 1)),
  stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  own_place INTEGER NOT NULL CHECK (own_place IN (0, 1)),
  torque_mnm INTEGER,
  torque_typed TEXT NOT NULL,
  torque_from TEXT CHECK (torque_from IN ('maker', 'reference', 'own', 'by feel')),
  torque_page TEXT NOT NULL,
  angle_deg REAL,
  stages TEXT NOT NULL CHECK (json_valid(stages)),
  lubrication TEXT NOT NULL CHECK (lubrication IN ('unknown', 'dry', 'oiled', 'greased', 'anti-seize', 'threadlock')),
  critical INTEGER NOT NULL CHECK (critical IN (0, 1)),
  later_when TEXT,
  order_kind TEXT NOT NULL CHECK (order_kind IN ('auto', 'cross', 'centre out', 'line', 'as numbered', 'maker')),
  recheck INTEGER NOT NULL CHECK (recheck IN (0, 1)),
  renew TEXT NOT NULL CHECK (renew IN ('no', 'must', 'if worn', 'overridden')),
  renew_rule TEXT,
  renew_why TEXT NOT NULL
) STRICT;
CREATE INDEX fset_job ON fset(job_id);
CREATE INDEX fset_removal_id ON fset(removal_id);
CREATE INDEX fset_spec_id ON fset(spec_id);
CREATE INDEX fset_stow_id ON fset(stow_id);
CREATE TABLE stack_item (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  set_id TEXT NOT NULL REFERENCES fset(id) DEFERRABLE INITIALLY DEFERRED,
  ord TEXT NOT NULL,
  what TEXT NOT NULL,
  spec_id TEXT REFERENCES spec(id) DEFERRABLE INITIALLY DEFERRED,
  qty INTEGER NOT NULL,
  points TEXT NOT NULL
) STRICT;
CREATE INDEX stack_item_job ON stack_item(job_id);
CREATE INDEX stack_item_set_id ON stack_item(set_id);
CREATE INDEX stack_item_spec_id ON stack_item(spec_id);
CREATE TABLE position (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  set_id TEXT NOT NULL REFERENCES fset(id) DEFERRABLE INITIALLY DEFERRED,
  n INTEGER NOT NULL,
  spec_id TEXT REFERENCES spec(id) DEFERRABLE INITIALLY DEFERRED,
  stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  found TEXT NOT NULL CHECK (found IN ('fitted', 'empty', 'new hole', 'unknown')),
  condition TEXT NOT NULL,
  hidden INTEGER NOT NULL CHECK (hidden IN (0, 1)),
  fate TEXT NOT NULL CHECK (fate IN ('fill', 'leave out', 'blocked')),
  fate_why TEXT NOT NULL
) STRICT;
CREATE INDEX position_job ON position(job_id);
CREATE INDEX position_set_id ON position(set_id);
CREATE INDEX position_spec_id ON position(spec_id);
CREATE INDEX position_stow_id ON position(stow_id);
CREATE TABLE holds (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  position_id TEXT NOT NULL REFERENCES position(id) DEFERRABLE INITIALLY DEFERRED,
  part_id TEXT NOT NULL REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX holds_job ON holds(job_id);
CREATE INDEX holds_position_id ON holds(position_id);
CREATE INDEX holds_part_id ON holds(part_id);
CREATE TABLE counting (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  expected INTEGER NOT NULL,
  counted INTEGER NOT NULL,
  at INTEGER NOT NULL,
  person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  note TEXT NOT NULL,
  ended TEXT CHECK (ended IN ('found', 'accepted')),
  ended_why TEXT NOT NULL,
  ended_at INTEGER,
  ended_by TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX counting_job ON counting(job_id);
CREATE INDEX counting_stow_id ON counting(stow_id);
CREATE INDEX counting_thing_id ON counting(thing_id);
CREATE INDEX counting_person_id ON counting(person_id);
CREATE INDEX counting_ended_by ON counting(ended_by);
CREATE TABLE move (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  spec_id TEXT REFERENCES spec(id) DEFERRABLE INITIALLY DEFERRED,
  home_set_id TEXT REFERENCES fset(id) DEFERRABLE INITIALLY DEFERRED,
  part_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  qty INTEGER NOT NULL,
  src TEXT NOT NULL CHECK (src IN ('hole', 'stow', 'away', 'scrap', 'lost', 'unknown', 'supply', 'stock')),
  dst TEXT NOT NULL CHECK (dst IN ('hole', 'stow', 'away', 'scrap', 'lost', 'unknown', 'supply', 'stock')),
  position_id TEXT REFERENCES position(id) DEFERRABLE INITIALLY DEFERRED,
  src_stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  dst_stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  cause TEXT NOT NULL CHECK (cause IN ('came off', 'refitted', 'came off again', 'received', 'counted', 'found', 'scrapped', 'renewed', 'sent out', 'came back', 'to stock', 'moved', 'written off')),
  count_id TEXT REFERENCES counting(id) DEFERRABLE INITIALLY DEFERRED,
  fresh INTEGER NOT NULL CHECK (fresh IN (0, 1)),
  at INTEGER NOT NULL,
  person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX move_job ON move(job_id);
CREATE INDEX move_spec_id ON move(spec_id);
CREATE INDEX move_home_set_id ON move(home_set_id);
CREATE INDEX move_part_id ON move(part_id);
CREATE INDEX move_position_id ON move(position_id);
CREATE INDEX move_src_stow_id ON move(src_stow_id);
CREATE INDEX move_dst_stow_id ON move(dst_stow_id);
CREATE INDEX move_count_id ON move(count_id);
CREATE INDEX move_person_id ON move(person_id);
CREATE TABLE connection (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  name TEXT NOT NULL,
  typed TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('plug', 'hose', 'pipe', 'union', 'cable', 'earth lead', 'linkage', 'other')),
  joint TEXT NOT NULL CHECK (joint IN ('hose on stub', 'flare', 'taper thread', 'face', 'port', 'plug', 'earth', 'linkage', 'unknown')),
  ends INTEGER NOT NULL,
  seal TEXT NOT NULL CHECK (seal IN ('unknown', 'none', 'part')),
  seal_part_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  goes_to TEXT NOT NULL,
  hidden INTEGER NOT NULL CHECK (hidden IN (0, 1)),
  leave_alone INTEGER NOT NULL CHECK (leave_alone IN (0, 1))
) STRICT;
CREATE INDEX connection_job ON connection(job_id);
CREATE INDEX connection_removal_id ON connection(removal_id);
CREATE INDEX connection_seal_part_id ON connection(seal_part_id);
CREATE TABLE fluid (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  name TEXT NOT NULL,
  typed TEXT NOT NULL,
  type TEXT NOT NULL,
  batch TEXT NOT NULL,
  capacity_ml INTEGER,
  drained_ml INTEGER,
  filled_ml INTEGER,
  lost TEXT NOT NULL CHECK (lost IN ('all', 'some', 'none', 'unknown')),
  live_energy TEXT CHECK (live_energy IN ('electricity', 'pressure', 'spring', 'load', 'motion', 'ignition', 'fuel', 'heat', 'other')),
  bleed INTEGER NOT NULL CHECK (bleed IN (0, 1))
) STRICT;
CREATE INDEX fluid_job ON fluid(job_id);
CREATE TABLE opens (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  fluid_id TEXT NOT NULL REFERENCES fluid(id) DEFERRABLE INITIALLY DEFERRED,
  thing_id TEXT NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX opens_job ON opens(job_id);
CREATE INDEX opens_fluid_id ON opens(fluid_id);
CREATE INDEX opens_thing_id ON opens(thing_id);
CREATE TABLE isolation (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT NOT NULL REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  energy TEXT NOT NULL CHECK (energy IN ('electricity', 'pressure', 'spring', 'load', 'motion', 'ignition', 'fuel', 'heat', 'other')),
  how TEXT NOT NULL,
  by_person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  lock_owner TEXT NOT NULL,
  scope TEXT NOT NULL CHECK (scope IN ('all', 'fluid', 'listed')),
  fluid_id TEXT REFERENCES fluid(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX isolation_job ON isolation(job_id);
CREATE INDEX isolation_removal_id ON isolation(removal_id);
CREATE INDEX isolation_by_person_id ON isolation(by_person_id);
CREATE INDEX isolation_fluid_id ON isolation(fluid_id);
CREATE TABLE protects (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  isolation_id TEXT NOT NULL REFERENCES isolation(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT NOT NULL REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX protects_job ON protects(job_id);
CREATE INDEX protects_isolation_id ON protects(isolation_id);
CREATE INDEX protects_removal_id ON protects(removal_id);
CREATE TABLE temporary (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  step_thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  name TEXT NOT NULL,
  typed TEXT NOT NULL,
  qty INTEGER NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('blocks', 'supports', 'cages', 'locks', 'aid')),
  holds_thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  out_with_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX temporary_job ON temporary(job_id);
CREATE INDEX temporary_removal_id ON temporary(removal_id);
CREATE INDEX temporary_step_thing_id ON temporary(step_thing_id);
CREATE INDEX temporary_holds_thing_id ON temporary(holds_thing_id);
CREATE INDEX temporary_out_with_id ON temporary(out_with_id);
CREATE TABLE mark (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  part_id TEXT REFERENCES part(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CHECK (kind IN ('match', 'order', 'direction', 'routing')),
  body TEXT NOT NULL
) STRICT;
CREATE INDEX mark_job ON mark(job_id);
CREATE INDEX mark_removal_id ON mark(removal_id);
CREATE INDEX mark_part_id ON mark(part_id);
CREATE TABLE together (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  name TEXT NOT NULL
) STRICT;
CREATE INDEX together_job ON together(job_id);
CREATE TABLE measure (
  id TEXT PRIMARY KEY NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  removal_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  what TEXT NOT NULL,
  unit TEXT NOT NULL,
  as_found REAL,
  as_found_typed TEXT NOT NULL,
  limit_low REAL,
  limit_high REAL,
  required INTEGER NOT NULL CHECK (required IN (0, 1))
) STRICT;
CREATE INDEX measure_job ON measure(job_id);
CREATE INDEX measure_removal_id ON measure(removal_id);
CREATE TABLE consumable (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  thing_id TEXT NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  kind TEXT NOT NULL CHECK (kind IN ('sealant', 'threadlock', 'grease', 'paste', 'oil', 'other')),
  name TEXT NOT NULL,
  batch TEXT NOT NULL,
  skin_minutes INTEGER,
  cure_minutes INTEGER,
  cure_before TEXT CHECK (cure_before IN ('fill', 'run')),
  put_at INTEGER
) STRICT;
CREATE INDEX consumable_job ON consumable(job_id);
CREATE INDEX consumable_thing_id ON consumable(thing_id);
CREATE TABLE deed (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  thing_id TEXT NOT NULL REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  round INTEGER NOT NULL,
  what TEXT NOT NULL CHECK (what IN ('started', 'tightened', 'paint-checked', 'left out', 'fitted', 'joined', 'put in', 'taken out', 'drained', 'filled', 'cold leak checked', 'bled', 'hot leak checked', 'given back', 'measured', 'repaired', 'put on', 'done', 'came off again')),
  value REAL,
  value_typed TEXT NOT NULL,
  known TEXT NOT NULL CHECK (known IN ('read', 'ticked')),
  tool_id TEXT REFERENCES tool(id) DEFERRABLE INITIALLY DEFERRED,
  with_thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  with_spec_id TEXT REFERENCES spec(id) DEFERRABLE INITIALLY DEFERRED,
  fresh INTEGER NOT NULL CHECK (fresh IN (0, 1)),
  person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  at INTEGER NOT NULL,
  why TEXT NOT NULL
) STRICT;
CREATE INDEX deed_job ON deed(job_id);
CREATE INDEX deed_thing_id ON deed(thing_id);
CREATE INDEX deed_tool_id ON deed(tool_id);
CREATE INDEX deed_with_thing_id ON deed(with_thing_id);
CREATE INDEX deed_with_spec_id ON deed(with_spec_id);
CREATE INDEX deed_person_id ON deed(person_id);
CREATE TABLE want (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  spec_id TEXT REFERENCES spec(id) DEFERRABLE INITIALLY DEFERRED,
  what TEXT NOT NULL,
  qty INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('needed', 'ordered', 'here', 'dropped')),
  cause TEXT NOT NULL,
  promised_at INTEGER
) STRICT;
CREATE INDEX want_job ON want(job_id);
CREATE INDEX want_thing_id ON want(thing_id);
CREATE INDEX want_spec_id ON want(spec_id);
CREATE TABLE accepted (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  finding TEXT NOT NULL,
  digest TEXT NOT NULL,
  why TEXT NOT NULL,
  person_id TEXT REFERENCES person(id) DEFERRABLE INITIALLY DEFERRED,
  at INTEGER NOT NULL
) STRICT;
CREATE INDEX accepted_job ON accepted(job_id);
CREATE INDEX accepted_person_id ON accepted(person_id);
CREATE TABLE photo (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  original_id TEXT NOT NULL REFERENCES original(id) DEFERRABLE INITIALLY DEFERRED,
  file_name TEXT NOT NULL,
  removal_id TEXT REFERENCES removal(id) DEFERRABLE INITIALLY DEFERRED,
  stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED,
  role TEXT NOT NULL CHECK (role IN ('as found', 'as refitted', 'other')),
  filed_by TEXT NOT NULL CHECK (filed_by IN ('hand', 'card', 'time', 'none')),
  filed_why TEXT NOT NULL,
  added_at INTEGER NOT NULL
) STRICT;
CREATE INDEX photo_job ON photo(job_id);
CREATE INDEX photo_original_id ON photo(original_id);
CREATE INDEX photo_removal_id ON photo(removal_id);
CREATE INDEX photo_stow_id ON photo(stow_id);
CREATE TABLE marker (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  photo_id TEXT NOT NULL REFERENCES photo(id) DEFERRABLE INITIALLY DEFERRED,
  n INTEGER NOT NULL,
  x REAL NOT NULL,
  y REAL NOT NULL,
  thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  together_id TEXT REFERENCES together(id) DEFERRABLE INITIALLY DEFERRED,
  carried_from_id TEXT REFERENCES marker(id) DEFERRABLE INITIALLY DEFERRED,
  confidence REAL
) STRICT;
CREATE INDEX marker_job ON marker(job_id);
CREATE INDEX marker_photo_id ON marker(photo_id);
CREATE INDEX marker_thing_id ON marker(thing_id);
CREATE INDEX marker_together_id ON marker(together_id);
CREATE INDEX marker_carried_from_id ON marker(carried_from_id);
CREATE TABLE card (
  id TEXT PRIMARY KEY NOT NULL,
  job_id TEXT NOT NULL REFERENCES job(id) DEFERRABLE INITIALLY DEFERRED,
  code TEXT NOT NULL,
  thing_id TEXT REFERENCES thing(id) DEFERRABLE INITIALLY DEFERRED,
  stow_id TEXT REFERENCES stow(id) DEFERRABLE INITIALLY DEFERRED
) STRICT;
CREATE INDEX card_job ON card(job_id);
CREATE INDEX card_thing_id ON card(thing_id);
CREATE INDEX card_stow_id ON card(stow_id);

CREATE UNIQUE INDEX stow_label_in_use ON stow(kind, label) WHERE emptied = 0;
CREATE UNIQUE INDEX position_number ON position(set_id, n);
CREATE UNIQUE INDEX marker_number ON marker(photo_id, n);
CREATE UNIQUE INDEX card_code ON card(code);
CREATE INDEX deed_thing_at ON deed(thing_id, at);

-- One chain per job and one for the workshop. `line` is the stored text that `hash` is taken of; the payload stands
-- beside it with a salt, so that it can be withheld from a copy without breaking the chain.
CREATE TABLE journal (
  seq INTEGER PRIMARY KEY AUTOINCREMENT,
  chain TEXT NOT NULL,
  n INTEGER NOT NULL CHECK (n >= 1),
  hash TEXT NOT NULL,
  line TEXT NOT NULL,
  salt TEXT NOT NULL,
  payload TEXT NOT NULL,
  actor TEXT NOT NULL,
  at INTEGER NOT NULL,
  what TEXT NOT NULL,
  undoes TEXT NOT NULL CHECK (json_valid(undoes)),
  batch TEXT,
  command TEXT NOT NULL,
  reply TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX journal_chain ON journal(chain, n);
CREATE UNIQUE INDEX journal_command ON journal(command);
CREATE INDEX journal_stack ON journal(chain, actor, seq);

CREATE TRIGGER journal_never_changes BEFORE UPDATE ON journal
BEGIN SELECT RAISE(ABORT, 'A journal entry is never changed.'); END;
CREATE TRIGGER journal_never_shrinks BEFORE DELETE ON journal
BEGIN SELECT RAISE(ABORT, 'A journal entry is never deleted.'); END;
