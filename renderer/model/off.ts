import type { JobView } from '../../core/contract/views.ts';
import type { Row } from '../../core/model/tables.ts';
import type { BagData } from '../screens/off/BagPanel.tsx';
import type { OffGroup } from '../screens/off/OffScreen.tsx';
import type { AwayData, WantData } from '../screens/off/Panels.tsx';
import { off as say } from '../texts/off.ts';
import type { Rich } from '../ui/rich.tsx';
import type { RowData } from '../ui/Rows.tsx';
import { isoOf } from './days.ts';
import { lastAmong } from './deeds.ts';
import { logOf, plannedIds } from './line.ts';
import { ago, day } from './time.ts';

type Stow = Row<'stow'>;

/** "Gear cover, M8 × 25 mm, hex 13 mm": the bare word "fastener" says nothing here. */
function setName(view: JobView, name: string, specId: string): string {
  const spec = (view.specNames[specId] ?? '').replace(/^fastener\s*/, '');
  return [name, spec].filter((word) => word !== '').join(', ');
}

/** Washers, spacers and nuts that came out with a set: "with washer, nut". */
function stackOf(view: JobView, setId: string): string {
  const items = view.state.stackItem.filter((item) => item.setId === setId).map((item) => item.what);
  return items.length === 0 ? '' : `, ${say.withStack([...new Set(items)].join(', '))}`;
}

/** Sets and parts that lie in a bag, by name. */
function namesIn(view: JobView, stowId: string): string[] {
  const removal = new Map(logOf(view).map((one) => [one.id, one.title]));
  const sets = view.state.fset
    .filter((set) => set.stowId === stowId)
    .map(
      (set) =>
        setName(view, set.name || removal.get(set.removalId) || '', set.specId) + stackOf(view, set.id),
    );
  const parts = view.state.part.filter((part) => part.stowId === stowId).map((part) => part.name);
  return [...sets, ...parts].filter((name) => name !== '');
}

/** Something in this bag that nobody counted yet. */
function isUnknown(view: JobView, stowId: string): boolean {
  return view.state.fset.some((set) => set.stowId === stowId && set.how === 'out' && !set.countKnown);
}

/** Letters of a label that stand in its column. */
const SHORT = 4;

function stowRow(view: JobView, stow: Stow, now: number): RowData {
  const search = view.searches.find((one) => one.stowId === stow.id);
  const count = view.bags.find((bag) => bag.stowId === stow.id);
  const qty = view.inBag[stow.id] ?? 0;
  const unknown = isUnknown(view, stow.id);
  const label = say.bag(stow.kind, stow.label);
  // A longer label would run into what lies in the bag: then it stands before it.
  const short = stow.label.length <= SHORT;
  const about = search
    ? say.differs(search.counted)
    : unknown
      ? say.notKnown
      : qty === 0
        ? say.emptied
        : count?.countedAt
          ? say.counted(day(count.countedAt, now))
          : say.neverCounted;
  return {
    id: stow.id,
    mark: short ? stow.label : '',
    name: [...(short ? [] : [label]), namesIn(view, stow.id).join('; ')].filter(Boolean).join(': ') || label,
    count: unknown ? (qty === 0 ? say.countUnknown : `${qty}+`) : qty,
    about,
    grave: search !== undefined,
  };
}

/** What happens to a part; of one that must be renewed, whether the new one is in hand. */
function fateOf(view: JobView, part: Row<'part'>): string {
  if (part.renew !== 'must') return say.fates[part.fate];
  const lacking = view.toGet.some((line) => line.thingIds.includes(part.id) && (line.needed ?? 1) > 0);
  return lacking ? say.mustRenew : say.newInHand;
}

function partRow(view: JobView, part: Row<'part'>, now: number): RowData {
  const away = view.state.away.find((one) => one.thingId === part.id && one.backAt === null);
  const late = away?.due && away.due < now ? `, ${say.late(ago(away.due, now))}` : '';
  return {
    id: part.id,
    mark: '',
    name: part.name,
    count: part.qty,
    about: away ? `${say.awaySince(away.toWhom, day(away.since, now))}${late}` : fateOf(view, part),
    grave: late !== '',
  };
}

/** What stands on the sheet for something that is out of the workshop; null where it is not. */
export function awayData(view: JobView, partId: string, now: number): AwayData | null {
  const away = view.state.away.find((one) => one.thingId === partId && one.backAt === null);
  const part = view.state.part.find((one) => one.id === partId);
  if (!away || !part) return null;
  const where = say.awaySince(away.toWhom, day(away.since, now));
  const late = away.due !== null && away.due < now;
  return {
    name: part.name,
    count: part.qty,
    about:
      away.due === null
        ? `${where}${say.awayNoDue}`
        : [
            `${where}${say.awayDue(day(away.due, now))}`,
            ...(late ? [', ', { strong: say.late(ago(away.due, now)) }] : []),
            '.',
          ],
    note: away.note,
  };
}

/** A part in no bag, and what happens to it. */
export function partData(view: JobView, partId: string) {
  const part = view.state.part.find((one) => one.id === partId);
  if (!part) return null;
  return { name: part.name, count: part.qty, about: say.fateSay(fateOf(view, part)) };
}

const rank = (row: RowData): number => (row.grave === true ? 0 : row.count === 0 ? 2 : 1);

/** By bag, tin, tray and shelf; then what is in none of them, away, or loose on the machine. */
export function offGroups(view: JobView, now: number): OffGroup[] {
  const used = Object.keys(view.inBag);
  const groups: OffGroup[] = [];
  for (const kind of ['bag', 'tin', 'tray', 'shelf'] as const) {
    const rows = view.state.stow
      .filter((stow) => stow.kind === kind && used.includes(stow.id))
      .sort((a, b) => a.label.localeCompare(b.label, undefined, { numeric: true }))
      .map((stow) => stowRow(view, stow, now))
      // What is empty is out of the way, and what is looked for comes first.
      .sort((a, b) => rank(a) - rank(b));
    if (rows.length > 0) groups.push({ title: say.kinds[kind], rows });
  }
  const away = new Set(view.state.away.filter((one) => one.backAt === null).map((one) => one.thingId));
  const last = lastAmong(view, ['fitted', 'came off again']);
  const planned = plannedIds(view);
  const off = view.state.part.filter(
    (part) => part.how === 'off' && last.get(part.id) !== 'fitted' && !planned.has(part.removalId ?? ''),
  );
  const nowhere = off.filter((part) => part.stowId === null && !away.has(part.id));
  if (nowhere.length > 0)
    groups.push({ title: say.nowhere, rows: nowhere.map((part) => partRow(view, part, now)) });
  const gone = off.filter((part) => away.has(part.id));
  if (gone.length > 0) groups.push({ title: say.away, rows: gone.map((part) => partRow(view, part, now)) });
  const loose = view.counts.filter((line) => line.slackened > 0);
  const titles = new Map(logOf(view).map((removal) => [removal.id, removal.title]));
  if (loose.length > 0)
    groups.push({
      title: say.loose,
      rows: loose.map((line) => ({
        id: line.setId ?? '',
        mark: '',
        name: setName(view, titles.get(line.removalId ?? '') ?? '', line.specId ?? ''),
        count: line.slackened,
        about: say.looseAbout,
      })),
    });
  return groups;
}

/** What stands on the sheet before anything is touched: a bag that is searched for, else the list to get. */
export function firstPanel(groups: readonly OffGroup[], wants: readonly WantData[]): string | null {
  const searched = groups.flatMap((group) => group.rows).find((row) => row.grave === true);
  return searched?.id ?? (wants.length > 0 ? 'to get' : null);
}

/** All pieces in one sentence: where they are, which are unaccounted. */
export function offSummary(view: JobView): Rich {
  const sum = (pick: (line: JobView['counts'][number]) => number) =>
    view.counts.reduce((all, line) => all + pick(line), 0);
  const base = say.summary({
    off: sum((line) => line.out),
    got: sum((line) => line.got),
    inHand: sum((line) => line.inBag),
    back: sum((line) => line.backIn),
    away: sum((line) => line.away),
    gone: sum((line) => line.scrapped + line.lost + line.toStock),
  });
  const unknown = sum((line) => line.unknown);
  const loose = sum((line) => line.slackened);
  return [
    base,
    ...(unknown > 0 ? [', ', { strong: say.unaccounted(unknown) }] : []),
    '.',
    ...(loose > 0 ? [` ${say.looseOn(loose)}`] : []),
  ];
}

/** What stands on the sheet while a bag is counted. */
export function bagData(view: JobView, stowId: string, counted: number | null): BagData | null {
  const stow = view.state.stow.find((one) => one.id === stowId);
  if (!stow) return null;
  const expected = view.inBag[stowId] ?? 0;
  const search = view.searches.find((one) => one.stowId === stowId);
  const unknown = search === undefined && isUnknown(view, stowId);
  const alike = view.lookAlikes.find((pair) => pair.stowId === stowId) ?? null;
  const specs = alike ? alike.specIds.flatMap((id) => view.state.spec.filter((spec) => spec.id === id)) : [];
  const bolts = specs.flatMap((spec) => {
    const size = Number(/^M(\d+(?:\.\d+)?)/.exec(spec.thread ?? '')?.[1]);
    if (!size || !spec.lengthUm) return [];
    const shape = {
      threadMm: size,
      lengthMm: spec.lengthUm / 1000,
      pitchMm: (spec.pitchUm ?? 1000) / 1000,
      acrossFlatsMm: spec.driveSizeUm ? spec.driveSizeUm / 1000 : size * 1.6,
      headHeightMm: size * 0.65,
      shankMm: Math.max(0, spec.lengthUm / 1000 - size * 2.5),
    };
    return [
      {
        id: spec.id,
        shape,
        name: `${spec.thread ?? ''} × ${spec.lengthUm / 1000}`,
        where: say.bag(stow.kind, stow.label),
      },
    ];
  });
  return {
    id: stowId,
    label: say.bag(stow.kind, stow.label),
    name: namesIn(view, stowId).join('; '),
    expected: search ? search.expected : expected,
    unknown,
    counted: counted ?? (search ? search.counted : null),
    say: search
      ? [{ strong: say.missing(search.missing) }, ` ${search.lastSeen.sentence}`]
      : unknown
        ? say.saySome
        : expected === 0
          ? say.sayEmpty
          : say.sayFits(expected),
    lookAt: search && search.missing > 0 ? search.lookAt : [],
    searching: search !== undefined,
    alike: alike && bolts.length > 1 ? { title: say.alikeTitle, say: alike.sentence, bolts } : null,
  };
}

/**
 * Pieces that are booked in when a line of the list to get is here; null where its note is all there is: a repair, or
 * something that no set and no part asks for. Where nobody said how many, one came.
 */
export function piecesHere(line: JobView['toGet'][number]): number | null {
  if (line.cause === 'repair' || line.thingIds.length === 0 || line.needed === 0) return null;
  return Math.max(1, line.needed ?? line.noted);
}

/** The list to get. */
export function wantsOf(view: JobView): WantData[] {
  return view.toGet.map((line) => ({
    id: line.key,
    what: line.what,
    quantity: line.needed === null && line.noted === 0 ? null : Math.max(line.needed ?? 0, line.noted),
    about: [say.causes[line.cause], ...titlesOf(view, line.thingIds)].join(', '),
    state: line.state,
    by: line.promisedAt === null ? '' : isoOf(line.promisedAt),
  }));
}

/** The removals that things belong to: a "gasket" alone could be any of five. */
function titlesOf(view: JobView, thingIds: readonly string[]): string[] {
  const { fset, part, position, removal } = view.state;
  const ids = thingIds.map((id) => {
    const setId = position.find((hole) => hole.id === id)?.setId ?? id;
    return (
      fset.find((set) => set.id === setId)?.removalId ?? part.find((one) => one.id === id)?.removalId ?? ''
    );
  });
  const titles = [...new Set(ids)].map((id) => removal.find((one) => one.id === id)?.title ?? '');
  return titles.filter((title) => title !== '').map((title) => say.getFor(title));
}

/** The list to get as CSV (RFC 4180): fields with a comma, quote or line break in quotes. */
export function wantsCsv(wants: readonly WantData[]): string {
  const field = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const rows = wants.map((want) => [
    want.what,
    String(want.quantity ?? say.countUnknown),
    want.about,
    say.states[want.state],
  ]);
  return [say.csv, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}
