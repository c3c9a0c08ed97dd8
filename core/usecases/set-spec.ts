import type { z } from 'zod';
import type { SpecValues } from '../contract/record.ts';
import { parseTorque } from '../fastening/index.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { poolKeyOf } from '../tally/index.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { renewalOf } from './log/renewal.ts';
import { holesOf } from './pieces.ts';

type Said = Reply<{ said: string }>;

/** Rewrites a specification and keeps its pool key right. */
function putSpec(decision: Decision, spec: Row<'spec'>): void {
  decision.writer.put('spec', { ...spec, poolKey: poolKeyOf(spec) });
}

/**
 * What the fasteners of a set are: thread, head, drive, class. Holes with a length of their own follow in all but the
 * length, since they are the same kind.
 */
export function setSpec(
  context: Context,
  input: JobInput & { setId: string; values: z.infer<typeof SpecValues> },
): Said {
  return inJob(context, 'set.spec', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    const own = holesOf(decision, input.setId).map((hole) => hole.specId);
    for (const id of new Set([found.value.specId, ...own])) {
      const spec = id === null ? null : decision.writer.get('spec', id);
      if (spec) putSpec(decision, { ...spec, ...input.values } as Row<'spec'>);
    }
    return ok({ said: 'Kept.' });
  });
}

const ANGLE = /(?:\+\s*)?(\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees?)?)\s*$/i;

/** "25 Nm", "20 Nm + 90°", "by feel"; empty = not known. */
function readTorque(
  typed: string,
): Result<Pick<Row<'fset'>, 'torqueMnm' | 'torqueTyped' | 'angleDeg'> & { byFeel: boolean }> {
  const text = typed.trim();
  const byFeel = /^(?:snug\s+)?by feel$|^snug$/i.test(text);
  if (text === '' || byFeel) return ok({ torqueMnm: null, torqueTyped: '', angleDeg: null, byFeel });
  const angle = ANGLE.exec(text);
  const angleDeg = angle ? Number((angle[1] ?? '').replace(',', '.')) : null;
  const rest = (angle ? text.slice(0, angle.index) : text).replace(/\+\s*$/, '').trim();
  if (angleDeg !== null && angleDeg > 3600)
    return refuse('input', `Expected an angle up to 3600°, got ${angleDeg}°.`);
  if (rest === '') return ok({ torqueMnm: null, torqueTyped: text, angleDeg, byFeel });
  const torque = parseTorque(rest);
  if (!torque.ok) return refuse('input', torque.sentence);
  return ok({ torqueMnm: Math.round(torque.value.torqueNm * 1000), torqueTyped: text, angleDeg, byFeel });
}

/**
 * The torque wanted, as typed with its unit, and where it is from. With an angle the fasteners count as renew unless
 * somebody decided about that already.
 */
export function setTorque(
  context: Context,
  input: JobInput & { setId: string; typed: string; from: 'maker' | 'reference' | 'own'; page: string },
): Said {
  return inJob(context, 'set.torque', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    const torque = readTorque(input.typed);
    if (!torque.ok) return torque;
    const { byFeel, ...values } = torque.value;
    const known = values.torqueMnm !== null || values.angleDeg !== null;
    const set = {
      ...found.value,
      ...values,
      torqueFrom: byFeel ? ('by feel' as const) : known ? input.from : null,
      torquePage: known ? input.page : '',
    };
    const spec = decision.writer.get('spec', set.specId) as Row<'spec'>;
    const asked = { kind: spec.kind, name: set.name, typed: set.typed, head: spec.head };
    const renewal = renewalOf({ ...asked, angleDeg: values.angleDeg });
    const undecided = set.renew === 'no' && values.angleDeg !== null;
    decision.writer.put('fset', undecided ? { ...set, ...renewal } : set);
    return ok({ said: 'Kept.' });
  });
}
