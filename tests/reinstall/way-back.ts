import { planJob } from '../../core/reinstall/index.ts';
import type { Finding, Plan, Step, StepAction } from '../../core/reinstall/index.ts';
import type { Row } from '../../core/model/tables.ts';
import type { JobBuilder } from '../support/build.ts';

/** Somebody who puts a job back: every deed is one event, booked as the program books it. */
export class WayBack {
  readonly job: JobBuilder;
  /** Called after each event; a test looks at the job there. */
  readonly seen: (event: string) => void;

  constructor(job: JobBuilder, seen: (event: string) => void = () => undefined) {
    this.job = job;
    this.seen = seen;
  }

  plan(): Plan {
    return planJob(this.job.state(), this.job.at);
  }

  step(id: string): Step {
    const step = this.plan().steps.find((one) => one.id === id);
    if (!step) throw new Error(`No step ${id}.`);
    return step;
  }

  /** Does everything of a step, in the order in which the step says it. `but`: what is left undone. */
  doStep(id: string, but: (action: StepAction, thingId: string) => boolean = () => false): void {
    const { actions, kind, thingId } = this.step(id);
    for (const action of actions)
      for (const thing of action.thingIds) if (!but(action, thing)) this.act(action, thing, kind);
    if (this.step(id).state !== 'done' && kind !== 'C1' && kind !== 'C2') this.deed(thingId, 'done');
  }

  private act(action: StepAction, id: string, kind: Step['kind']): void {
    switch (action.code) {
      case 'put in':
        return this.deed(id, 'put in');
      case 'take out':
        return this.deed(id, 'taken out');
      case 'fit':
      case 'renew':
        return this.fit(id, action.code === 'renew');
      case 'put on':
        return this.putOn(id);
      case 'join':
        return this.deed(id, 'joined');
      case 'start':
        return this.start(id);
      case 'tighten':
      case 'final tighten':
        return this.tighten(id, kind);
      case 'measure':
        return this.measure(id);
      case 'fill':
        return this.deed(id, 'filled', {
          value: this.job.rows.fluid.find((row) => row.id === id)?.drainedMl ?? null,
        });
      case 'leak check cold':
        return this.deed(id, 'cold leak checked');
      case 'prime and bleed':
        return this.deed(id, 'bled');
      case 'leak check hot':
        return this.deed(id, 'hot leak checked');
      case 'give back':
        return this.deed(id, 'given back');
      case 'own step':
        return this.deed(id, 'done');
      case 'recheck':
        return this.deed(id, 'measured');
      default:
        return undefined;
    }
  }

  deed(id: string, what: Row<'deed'>['what'], more: Partial<Row<'deed'>> = {}): void {
    this.job.deed(id, what, more);
    this.seen(`${what} ${id}`);
  }

  /** A part goes back, a new one where it must be new. */
  fit(id: string, fresh: boolean): void {
    const part = this.job.rows.part.find((row) => row.id === id);
    if (!part || part.fate === 'leave out') return;
    if (part.how === 'off')
      this.job.move({
        partId: id,
        qty: Math.max(1, part.qty),
        src: 'stow',
        dst: 'hole',
        cause: fresh ? 'renewed' : 'refitted',
        fresh,
        at: this.job.tickTock(),
      });
    this.deed(id, 'fitted', { fresh });
  }

  private putOn(id: string): void {
    const row = this.job.rows.consumable.find((one) => one.id === id);
    if (!row || row.putAt !== null) return;
    this.job.set('consumable', id, { putAt: this.job.tickTock() });
    this.deed(row.thingId, 'put on');
  }

  start(id: string): void {
    const hole = this.job.rows.position.find((row) => row.id === id);
    const set = this.job.rows.fset.find((row) => row.id === hole?.setId);
    // A union is started by hand too; its deed is "joined".
    if (!hole || !set) return;
    if (set.how === 'out') {
      const fresh = set.renew === 'must';
      this.job.move({
        specId: hole.specId ?? set.specId,
        homeSetId: set.id,
        positionId: id,
        src: 'stow',
        dst: 'hole',
        srcStowId: set.stowId,
        cause: fresh ? 'renewed' : 'refitted',
        fresh,
        at: this.job.tickTock(),
      });
    }
    this.deed(id, 'started', { fresh: set.renew === 'must' });
  }

  private tighten(id: string, kind: Step['kind']): void {
    const hole = this.job.rows.position.find((row) => row.id === id);
    const set = this.job.rows.fset.find((row) => row.id === hole?.setId);
    if (!set || (kind !== 'T' && set.laterWhen !== null)) return;
    const value = set.torqueMnm === null ? null : set.torqueMnm / 1000;
    this.deed(id, 'tightened', {
      value,
      valueTyped: value === null ? '' : `${value} N·m`,
      fresh: set.renew === 'must',
    });
  }

  private measure(id: string): void {
    const row = this.job.rows.measure.find((one) => one.id === id);
    const value = ((row?.limitLow ?? 0) + (row?.limitHigh ?? 1)) / 2;
    this.deed(id, 'measured', { value, valueTyped: `${value}` });
  }

  /** What has come new for a thing that must be new. */
  receive(step: Step): void {
    for (const lack of step.lacks) {
      const part = this.job.rows.part.find((row) => row.id === lack.thingId);
      const set = this.job.rows.fset.find((row) => row.id === lack.thingId);
      if (!part && !set) continue;
      this.job.move({
        ...(part ? { partId: part.id } : { homeSetId: set?.id ?? null, specId: set?.specId ?? null }),
        qty: lack.qty,
        src: 'supply',
        dst: 'stow',
        dstStowId: (part ?? set)?.stowId ?? null,
        cause: 'received',
        fresh: true,
        at: this.job.tickTock(),
      });
      this.seen(`received ${lack.thingId}`);
    }
  }

  /** Waits for what comes by itself: cures. */
  wait(step: Step): void {
    for (const lack of step.lacks)
      if (lack.code === 'cure' && lack.until !== null)
        this.job.tickTock(Math.ceil((lack.until - this.job.at) / 60_000) + 1);
  }

  /** Puts everything back, each time one of the steps that can go ahead; `choose` says which. Stops when nothing can. */
  everything(choose: (of: number) => number = () => 0, before: (step: Step) => void = () => undefined): void {
    for (;;) {
      const plan = this.plan();
      const open = plan.steps.filter((step) => step.kind !== 'K' && step.state !== 'done');
      const ready = open.filter((step) => plan.ahead.has(step.id) && step.state === 'ready');
      const step = ready[choose(ready.length)] ?? ready[0];
      if (step) {
        before(step);
        this.doStep(step.id);
        if (this.step(step.id).state !== 'done') throw new Error(`Not done: ${step.kind} ${step.title}`);
        continue;
      }
      const waiting = open.find((one) => one.state === 'waiting' && one.lacks.length > 0);
      if (!waiting) return;
      const had = waiting.lacks.length;
      this.receive(waiting);
      this.wait(waiting);
      if (this.step(waiting.id).lacks.length >= had) throw new Error(`Waits for ever: ${waiting.why}`);
    }
  }
}

/** What a clean job must not have. */
export function alarms(plan: Plan): Finding[] {
  return plan.findings.filter((finding) => finding.severity !== 'note' && finding.accepted === null);
}
