import type { ConditionItem, Entry, EntryItem, PlaceItem, StowItem } from '../../entry/meaning.ts';
import { readEntry, takesNothingOff } from '../../entry/index.ts';
import { writeCondition, writeStow } from '../../entry/write-words.ts';
import { blank } from '../../model/blank.ts';
import { againPlans } from '../../model/off-again.ts';
import { ok, type Result, refuse } from '../../model/result.ts';
import type { Row } from '../../model/tables.ts';
import type { Context, Decision, JobInput, Reply } from '../frame.ts';
import { newlyAlike } from '../alike.ts';
import { inJob } from '../frame.ts';
import { endUnderWay, ordOfNext, startPlanned } from '../pattern/begin.ts';
import { differencesOf } from '../pattern/differences.ts';
import { holesOf, stowFor, nextBag } from '../pieces.ts';
import { logOrder } from './order.ts';
import { threadDoubts } from './spec.ts';
import { addConnection, addConsumable, addFasteners, addPart, type Line, put } from './rows.ts';
import { addFluid, addMadeSafe, addTemporary } from './rows-other.ts';

export interface LogInput extends JobInput {
  readonly text: string;
  readonly removalId: string | null;
  readonly newRemovalId?: string | undefined;
  readonly did?: Row<'removal'>['did'] | undefined;
  readonly place?: string | undefined;
  readonly side?: Row<'removal'>['side'] | undefined;
  readonly personId?: string | null | undefined;
}

export interface Logged {
  removalId: string;
  number: number;
  made: { table: string; id: string }[];
  notUnderstood: string[];
  differences: string[];
  said: string;
}

/** The plug of a system; a spark plug beside a fluid comes off like any part. */
const DRAIN_PLUG = /^(?:(?:drain|fill|filler|level|sump|oil|screw|magnetic) )*plug$/i;

/** What was only slackened, opened, moved aside or made safe says so for the whole removal, unless something came off. */
function didOf(items: readonly EntryItem[]): Row<'removal'>['did'] {
  const did = new Set<Row<'removal'>['did']>();
  const drained = items.some((item) => item.kind === 'fluid');
  for (const item of items) {
    if (item.kind === 'fasteners') did.add(item.happened);
    // The plug by which it was drained is no part that came off: it is closed again.
    else if (item.kind === 'part' && drained && DRAIN_PLUG.test(item.name)) did.add('opened');
    else if (item.kind === 'part' || item.kind === 'connection') did.add(item.happened);
    else if (item.kind === 'made safe') did.add('safe');
    else if (item.kind === 'fluid') did.add('opened');
  }
  for (const one of ['off', 'aside', 'opened', 'slackened', 'safe'] as const) if (did.has(one)) return one;
  return 'off';
}

function titleOf(items: readonly EntryItem[]): string {
  for (const item of items) {
    if (item.kind === 'part' || item.kind === 'connection' || item.kind === 'fluid')
      return capital(item.name);
    if (item.kind === 'made safe') return capital(item.how);
  }
  for (const item of items) if (item.kind === 'fasteners' && item.name) return capital(item.name);
  return '';
}

const capital = (text: string): string => (text === '' ? '' : text[0]?.toUpperCase() + text.slice(1, 300));

/** How what was moved aside hangs, as typed; "" where nothing was said. */
function heldByOf(items: readonly EntryItem[]): string {
  const said = items.flatMap((item) => ('heldBy' in item && item.heldBy !== null ? [item.heldBy] : []));
  return said[0] ?? '';
}

function newRemoval(decision: Decision, input: LogInput, items: readonly EntryItem[]): Row<'removal'> {
  const did = input.did ?? didOf(items);
  return blank('removal', input.newRemovalId ?? decision.newId(), decision.jobId, {
    ord: ordOfNext(decision),
    title: titleOf(items),
    typed: input.text,
    did,
    place: input.place ?? '',
    side: input.side ?? null,
    phase: 'under way',
    heldBy: heldByOf(items),
    startedAt: decision.at,
    zone: decision.state.job.zone,
    personId: input.personId ?? decision.personId,
  });
}

/** "left", "right hand side", "both sides" among the words for the place; null = none or more than one. */
function sideOf(place: string): Row<'removal'>['side'] {
  const said = (['left', 'right', 'both'] as const).filter((side) =>
    new RegExp(`\\b${side}\\b`, 'i').test(place),
  );
  return said.length === 1 ? (said[0] ?? null) : null;
}

/** Every place that was said, also in a line before, is kept; the first that says a side gives the side. */
function withPlaces(removal: Row<'removal'>, items: readonly EntryItem[]): Row<'removal'> {
  const said = items.flatMap((item) => (item.kind === 'place' ? [item.place] : []));
  if (said.length === 0) return removal;
  const place = [...new Set([removal.place, ...said])].filter((one) => one !== '').join(', ');
  return { ...removal, place, side: removal.side ?? sideOf(said.join(', ')) };
}

/** The removal named; for a line that takes nothing off, the one under way; null = a new one. */
function targetOf(decision: Decision, input: LogInput, items: readonly EntryItem[]): string | null {
  if (input.removalId !== null || !takesNothingOff(items)) return input.removalId;
  return decision.state.removal.find((removal) => removal.phase === 'under way')?.id ?? null;
}

/** The removal a line goes into: the one named, or a new one, which ends the one under way. */
function removalFor(
  decision: Decision,
  input: LogInput,
  items: readonly EntryItem[],
): Result<Row<'removal'>> {
  const targetId = targetOf(decision, input, items);
  if (targetId !== null) {
    const known = decision.writer.get('removal', targetId);
    if (!known || known.jobId !== decision.jobId)
      return refuse('not-found', `Expected a removal of this job, got ${targetId}.`);
    if (againPlans(decision.state).has(known.id) && known.phase === 'planned')
      return refuse(
        'refused',
        `${known.title || 'This'} is only planned to come off again. Say first that it is off; then add to its own removal.`,
      );
    if (known.phase === 'void') return refuse('refused', 'This removal is void. Start a new one.');
    const typed = known.typed === '' ? input.text : `${known.typed}\n${input.text}`;
    const title = known.title === '' ? titleOf(items) : known.title;
    const begun = known.phase === 'planned' ? startPlanned(decision, known) : known;
    const heldBy = [known.heldBy, heldByOf(items)].filter((one) => one !== '').join(', ');
    return ok({ ...begun, typed, title, heldBy, did: input.did ?? known.did });
  }
  endUnderWay(decision);
  return ok(newRemoval(decision, input, items));
}

/** "hole 3 snapped", "bag 7", "front, left" alone belong to what was logged last. */
function addLoose(line: Line, item: ConditionItem | StowItem | PlaceItem): string | null {
  const { decision } = line;
  const set =
    line.lastSet ?? decision.state.fset.filter((one) => one.removalId === line.removal.id).at(-1) ?? null;
  if (item.kind === 'place') return null;
  if (!set)
    return item.kind === 'stow' ? writeStow(item.stow, 'plain').join('') : writeCondition(item.condition);
  if (item.kind === 'stow') {
    const stow =
      item.stow.label === null ? nextBag(decision) : stowFor(decision, item.stow.kind, item.stow.label);
    const current = decision.writer.get('fset', set.id) ?? set;
    decision.writer.put('fset', { ...current, stowId: stow.id });
    line.bag = stow;
    return null;
  }
  const holes = holesOf(decision, set.id);
  const hit = item.condition.holes.length > 0 ? item.condition.holes : [];
  for (const hole of holes)
    if (hit.includes(hole.n))
      decision.writer.put('position', {
        ...hole,
        condition: item.condition.what,
        fate: item.condition.what === 'snapped' ? 'blocked' : hole.fate,
        fateWhy: item.condition.what === 'snapped' ? 'snapped at removal' : hole.fateWhy,
      });
  return hit.length > 0 && hit.every((n) => holes.some((hole) => hole.n === n))
    ? null
    : writeCondition(item.condition);
}

/** Books one item of the line; what only describes and found nothing to describe is kept as a note. */
function addItem(line: Line, item: EntryItem): void {
  const { decision, removal } = line;
  switch (item.kind) {
    case 'fasteners':
      addFasteners(line, item);
      return;
    case 'part':
      addPart(line, item);
      return;
    case 'connection':
      addConnection(line, item);
      return;
    case 'fluid':
      addFluid(line, item);
      return;
    case 'made safe':
      addMadeSafe(line, item);
      return;
    case 'temporary':
      addTemporary(line, item);
      return;
    case 'measurement':
      put(
        line,
        'measure',
        blank('measure', decision.newId(), decision.jobId, {
          removalId: removal.id,
          what: item.what,
          unit: item.unit,
          asFound: item.value,
          asFoundTyped: `${item.value} ${item.unit}`.trim(),
        }),
      );
      return;
    case 'mark':
      put(
        line,
        'mark',
        blank('mark', decision.newId(), decision.jobId, { removalId: removal.id, body: item.text }),
      );
      return;
    case 'condition':
    case 'stow':
    case 'place': {
      const note = addLoose(line, item);
      if (note !== null) line.kept.push(note);
      return;
    }
    case 'treatment':
      addConsumable(line, removal.id, item.treatment);
      return;
    case 'note':
      line.notes.push(item.text);
      return;
  }
}

/**
 * One entry line as typed. It is kept whole in the removal whatever was understood; what was not understood is also
 * kept as a note, and answered, so that nothing is swallowed.
 */
export function logAdd(context: Context, input: LogInput): Reply<Logged> {
  return inJob<Logged>(context, 'log.add', input, (decision) => {
    const entry = readEntry(input.text);
    const found = removalFor(decision, input, entry.items);
    if (!found.ok) return found;
    const removal = withPlaces(found.value, entry.items);
    decision.writer.put('removal', removal);
    const sets = decision.state.fset.filter((set) => set.removalId === removal.id);
    const bagId = sets.at(-1)?.stowId ?? null;
    const line: Line = {
      decision,
      removal,
      typed: input.text,
      made: [],
      bag: bagId === null ? null : decision.writer.get('stow', bagId),
      lastSet: null,
      lastOrd:
        sets
          .map((set) => set.ord)
          .sort()
          .at(-1) ?? null,
      notes: [],
      kept: [],
    };
    for (const item of entry.items) addItem(line, item);
    const notes = [...line.notes, ...line.kept];
    if (notes.length > 0)
      decision.writer.put('removal', {
        ...removal,
        note: [removal.note, ...notes].filter((text) => text !== '').join('\n'),
      });
    const order = logOrder([...decision.state.removal.filter((one) => one.id !== removal.id), removal]);
    const number = order.findIndex((one) => one.id === removal.id) + 1;
    const notUnderstood = entry.tokens.filter((token) => !token.understood).map((token) => token.text);
    const differences = differencesOf(context, decision, removal.id);
    return ok({
      removalId: removal.id,
      number,
      made: line.made,
      notUnderstood,
      differences,
      said: [
        saidOf(number, removal, input.text, notUnderstood),
        keptWords([...remarks(entry), ...line.kept]),
        threadDoubts(entry.items),
        ...differences,
        newlyAlike(decision),
      ]
        .filter((text) => text !== '')
        .join(' '),
    });
  });
}

/** Words that are known and that no field holds; a note that was asked for is none of them. */
function remarks({ tokens, items }: Entry): string[] {
  const notes = new Set(items.flatMap((item) => (item.kind === 'note' ? [item.text] : [])));
  return tokens.flatMap(({ kind, text }) =>
    (kind === 'note' || kind === 'happened') && notes.has(text) ? [text] : [],
  );
}

const keptWords = (kept: readonly string[]): string =>
  kept.length === 0 ? '' : `Kept as a note: ${kept.map((one) => `“${one}”`).join(', ')}.`;

function saidOf(
  number: number,
  removal: Row<'removal'>,
  text: string,
  notUnderstood: readonly string[],
): string {
  const name = removal.title === '' ? `Removal ${number}` : `Removal ${number}, ${removal.title},`;
  // A line that went into a removal that was there says into which: it may have been meant for a new one.
  const head =
    removal.typed === text ? `${name} is written down.` : `${name} has it too: “${text.slice(0, 80)}”.`;
  if (notUnderstood.length === 0) return head;
  return `${head} Not understood, kept as a note: ${notUnderstood.map((one) => `“${one}”`).join(', ')}.`;
}
