import {
  convert,
  findThread,
  parseClass,
  parseDecimal,
  parseLength,
  parseLubrication,
  parseStages,
  parseTorque,
  refuse,
  type Lubrication,
  type Outcome,
  type PropertyClass,
  type Thread,
  type Tightening,
  type Torque,
} from '../../fastening/index.ts';
import { firstRefusal, optional, parsePercent, type HandbookVerb } from './verb.ts';

export const TORQUE_OPTIONS: HandbookVerb['options'] = [
  { name: 'thread', also: ['t'], says: 'M8, M10x1.25, 5/16-18' },
  { name: 'class', also: ['c', 'grade'], says: '8.8, 10.9, grade 5, A2-70; left out: unknown' },
  { name: 'lubrication', also: ['lube'], says: 'dry, black, zinc, oiled, greased, moly, low-friction' },
  { name: 'k', also: ['K'], says: 'nut factor, instead of the lubrication: 0.2' },
  { name: 'share', says: 'share of proof load: 75 %' },
  { name: 'mu', also: ['mu-total', 'friction'], says: 'friction for the fuller metric formula: 0.12' },
  { name: 'mu-head', says: 'friction under the head, where it differs' },
  { name: 'preload', also: ['force'], says: 'preload instead of a share: 25230 N, 25 kN, 5853 lbf' },
  { name: 'torque', also: ['wanted'], says: 'torque to judge: 25 N·m, 18 lbf·ft, 20 N·m + 90°' },
  { name: 'reached', says: 'torque reached, against --torque' },
  { name: 'drag', also: ['prevailing'], says: 'drag of a self-locking nut, added to --torque: 8 lbf·in' },
  { name: 'scatter', says: 'with --mu: scatter of the tightening, 1.6 to 1.8 for a torque wrench' },
  { name: 'across-flats', also: ['af', 'head'], says: 'head size where the thread is unknown: 13' },
  { name: 'maker', also: ['page'], says: "page of the maker's manual that gives the torque" },
];

/** Everything that the verb `torque` can be told. */
export interface Read {
  readonly thread: Thread | undefined;
  readonly cls: PropertyClass | undefined;
  readonly lubrication: Lubrication | undefined;
  readonly k: number | undefined;
  readonly share: number | undefined;
  readonly mu: number | undefined;
  readonly muHead: number | undefined;
  readonly preloadN: number | undefined;
  readonly wanted: Tightening | undefined;
  readonly reached: Tightening | undefined;
  readonly headMm: number | undefined;
  readonly maker: string | undefined;
  readonly scatter: number | undefined;
  readonly drag: Torque | undefined;
}

function parseForce(text: string): Outcome<number> {
  const parts = /^([\d.,\s]*\d)\s*(N|kN|lbf?|kip|kgf)?$/i.exec(text.trim());
  const number = parts && parseDecimal(parts[1] ?? '');
  if (!parts || !number?.ok)
    return refuse('torque.preload', 'a preload such as 25 kN or 5853 lbf', text.trim());
  const unit = (parts[2] ?? 'N').replace(/^lb$/i, 'lbf');
  return convert(number.value, unit, 'N');
}

/** Reads the options of `torque`, or the first refusal. */
export function readAll(get: (name: string) => string | undefined): Outcome<Read> {
  const thread = optional(get('thread'), findThread);
  const cls = optional(get('class'), parseClass);
  const lubrication = optional(get('lubrication'), parseLubrication);
  const k = optional(get('k'), parseDecimal);
  const mu = optional(get('mu'), parseDecimal);
  const muHead = optional(get('mu-head'), parseDecimal);
  const scatter = optional(get('scatter'), parseDecimal);
  const share = optional(get('share'), parsePercent);
  const preload = optional(get('preload'), parseForce);
  const wanted = optional(get('torque'), (text) => parseStages(text));
  const reached = optional(get('reached'), (text) => parseStages(text));
  const drag = optional(get('drag'), (text) => parseTorque(text));
  const head = optional(get('across-flats'), (text) => parseLength(text));
  const refused = firstRefusal(
    thread,
    cls,
    lubrication,
    k,
    mu,
    muHead,
    scatter,
    share,
    preload,
    wanted,
    reached,
    drag,
    head,
  );
  if (refused) return refused;
  return {
    ok: true,
    value: {
      thread: valueOf(thread),
      cls: valueOf(cls),
      lubrication: valueOf(lubrication),
      k: valueOf(k),
      share: valueOf(share),
      mu: valueOf(mu),
      muHead: valueOf(muHead),
      preloadN: valueOf(preload),
      wanted: valueOf(wanted),
      reached: valueOf(reached),
      headMm: valueOf(head)?.lengthMm,
      maker: get('maker'),
      scatter: valueOf(scatter),
      drag: valueOf(drag),
    },
  };
}

/** The value of an outcome that was already found good. */
function valueOf<T>(outcome: Outcome<T>): T | undefined {
  return outcome.ok ? outcome.value : undefined;
}
