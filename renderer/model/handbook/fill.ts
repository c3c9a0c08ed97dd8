import type { JobView } from '../../../core/contract/views.ts';
import { formatTorque } from '../../../core/fastening/index.ts';
import type { Row } from '../../../core/model/tables.ts';
import type { PlanStep } from '../putback.ts';
import { handbook as say } from '../../texts/handbook.ts';
import type { Typed } from './answer.ts';
import type { HandbookState } from './index.ts';
import { torqueTopic } from './torque.ts';

type Opening = Pick<HandbookState, 'topic' | 'typed' | 'from'>;

/** What the job calls the state of a thread, in the handbook's words. */
const LUBRICATION: Readonly<Record<Row<'fset'>['lubrication'], string>> = {
  unknown: '',
  dry: 'dry',
  oiled: 'oiled',
  greased: 'greased',
  'anti-seize': 'moly',
  threadlock: '',
};

const millimetres = (um: number): string => `${Number((um / 1000).toFixed(3))} mm`;

/** "M8", "M10x1.25", "5/16-18 UNC": with the pitch where it was said. */
function threadOf(spec: Row<'spec'>): string {
  if (spec.thread === null) return '';
  return spec.pitchUm !== null && /^M[\d.]+$/.test(spec.thread)
    ? `${spec.thread}x${spec.pitchUm / 1000}`
    : spec.thread;
}

/** Under which field of the handbook the tool of a head belongs. */
function headOf(spec: Row<'spec'>): Typed {
  if (spec.drive === 'hex socket' && spec.driveSizeUm !== null) return { key: millimetres(spec.driveSizeUm) };
  if (spec.drive === 'hexalobular') return { lobe: spec.driveTyped };
  return spec.driveSizeUm === null ? {} : { head: millimetres(spec.driveSizeUm) };
}

function nameOf(view: JobView, set: Row<'fset'>): string {
  const removal = view.state.removal.find((one) => one.id === set.removalId);
  return set.name || removal?.title || set.typed;
}

/**
 * The set at hand, its torque and what is known of its thread: "Why this torque?" Where none is noted, what the handbook
 * has for the thread; null where it has nothing either.
 */
export function torqueOpening(
  view: JobView,
  step: PlanStep,
): (Opening & { readonly question: string }) | null {
  const ids = step.fasteners.map((one) => one.setId);
  const sets = ids.flatMap((id) => view.state.fset.find((one) => one.id === id) ?? []);
  const set = sets.find((one) => one.torqueMnm !== null || one.stages.length > 0) ?? sets[0];
  const spec = set && view.state.spec.find((one) => one.id === set.specId);
  if (!set || !spec) return null;
  const figure =
    set.stages.join(' + ') ||
    set.torqueTyped ||
    (set.torqueMnm === null ? '' : formatTorque(set.torqueMnm / 1000));
  const known = threadOf(spec);
  const torque: Typed = {
    maker: figure,
    page: set.torqueFrom === 'maker' ? set.torquePage : '',
    thread: known,
    class: spec.grade ?? '',
    lubrication: LUBRICATION[set.lubrication],
    head: known === '' && spec.driveSizeUm !== null ? millimetres(spec.driveSizeUm) : '',
  };
  if (figure === '' && torqueTopic.answer(torque).answer === null) return null;
  return {
    question: figure === '' ? say.whichTorque : say.whyTorque,
    topic: 'torque',
    from: nameOf(view, set),
    typed: { torque, identify: headOf(spec) },
  };
}

/** The last set of a removal whose thread is not confirmed, by its head: "Which thread?" Null where none is in doubt. */
export function threadOpening(view: JobView, removalId: string | null): Opening | null {
  const sets = view.state.fset.filter((one) => one.removalId === removalId);
  for (const set of sets.toReversed()) {
    const spec = view.state.spec.find((one) => one.id === set.specId);
    if (!spec) continue;
    const head = headOf(spec);
    // A thread that was said is no question, though its pitch may only be the usual one.
    const confirmed = spec.thread !== null && (spec.threadKnown || spec.pitchUm !== null);
    if (confirmed || (Object.keys(head).length === 0 && spec.thread === null)) continue;
    return {
      topic: 'identify',
      from: nameOf(view, set),
      typed: { identify: { ...head, ...(spec.grade === null ? {} : { mark: spec.grade }) } },
    };
  }
  return null;
}
