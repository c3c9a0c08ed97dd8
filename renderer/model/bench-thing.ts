import type { JobView } from '../../core/contract/views.ts';
import type { PlainTable } from '../../core/contract/record.ts';
import { ok, type Result, refuse } from '../../core/model/result.ts';
import { type Row, TABLES } from '../../core/model/tables.ts';
import { bench as say } from '../texts/bench.ts';
import type { BenchField, Write } from './bench-fields.ts';
import { fieldKinds, optionsOf, readStow, stowName } from './bench-build.ts';
import { setFields } from './bench-set.ts';

/** Tables whose rows are things of a removal, in the order of the list. */
export const THINGS = [
  'fset',
  'part',
  'connection',
  'fluid',
  'isolation',
  'temporary',
  'mark',
  'measure',
] as const satisfies readonly PlainTable[];
export type ThingTable = (typeof THINGS)[number];

/** Fields of one row, written by their own names. */
function fieldsFor<T extends ThingTable>(table: T, row: Row<T>) {
  type Name = keyof Row<T> & string;
  const { id } = row as { id: string };
  const values = row as Readonly<Record<string, unknown>>;
  const kinds = fieldKinds(id);
  const change = (field: Name, value: unknown): Result<Write> =>
    ok({ verb: 'change', table, id, values: { [field]: value } });
  const text = (field: Name) => String(values[field] ?? '');
  const number = (field: Name, typed: string, whole: boolean): Result<Write> => {
    const plain = typed.trim().replace(',', '.');
    if (plain === '' && !whole) return change(field, null);
    const value = Number(plain);
    return plain !== '' && Number.isFinite(value) && (!whole || Number.isInteger(value))
      ? change(field, value)
      : refuse('input', whole ? say.countExpected(typed) : say.numberExpected(typed));
  };
  return {
    line: (field: Name, label: string, example = '') =>
      kinds.line(field, label, text(field), example, (typed) => change(field, typed.trim())),
    text: (field: Name, label: string, example: string) =>
      kinds.text(field, label, text(field), example, (typed) => change(field, typed)),
    number: (field: Name, label: string, whole: boolean) =>
      kinds.line(field, label, text(field), '', (typed) => number(field, typed, whole)),
    pick: (field: Name, label: string, all: readonly string[]) =>
      kinds.pick(field, label, text(field), optionsOf(all), (value) => change(field, value)),
    choice: (field: Name, label: string, all: readonly string[]) =>
      kinds.choice(field, label, text(field), optionsOf(all), (value) => change(field, value)),
    yes: (field: Name, label: string) =>
      kinds.yes(field, label, values[field] === true, (value) => change(field, value)),
  };
}

function partFields(view: JobView, part: Row<'part'>): BenchField[] {
  const of = fieldsFor('part', part);
  return [
    of.line('name', say.name, say.nameExample),
    of.pick('fate', say.fate, TABLES.part.schema.shape.fate.options),
    of.line('fateWhy', say.why),
    of.number('qty', say.quantity, true),
    of.choice('how', say.how, ['off', 'aside', 'opened']),
    {
      kind: 'line',
      id: `${part.id}/bag`,
      label: say.bag,
      value: stowName(view, part.stowId),
      example: 'shelf B',
      write: (typed) => {
        const stow = readStow(typed);
        return stow.ok ? ok({ verb: 'partStow', partId: part.id, ...stow.value }) : stow;
      },
    },
    of.line('condition', say.condition, say.conditionExample),
    of.yes('ownPlace', say.ownPlace),
    of.line('ownPlaceText', say.ownPlaceText, say.ownPlaceExample),
    of.line('stamped', say.stamped, say.stampedExample),
    of.yes('hidden', say.hidden),
    of.pick('kind', say.kind, TABLES.part.schema.shape.kind.options),
  ];
}

function connectionFields(row: Row<'connection'>): BenchField[] {
  const of = fieldsFor('connection', row);
  const { kind, joint } = TABLES.connection.schema.shape;
  return [
    of.line('name', say.name),
    of.pick('kind', say.connectionKind, kind.options),
    of.pick('joint', say.joint, joint.options),
    of.number('ends', say.ends, true),
    of.line('goesTo', say.goesTo, say.goesToExample),
    of.yes('leaveAlone', say.leaveAlone),
    of.yes('hidden', say.hidden),
  ];
}

function measureFields(row: Row<'measure'>): BenchField[] {
  const of = fieldsFor('measure', row);
  return [
    of.line('what', say.measureWhat),
    of.number('asFound', say.found, false),
    of.line('unit', say.unit, 'mm'),
    of.number('limitLow', say.low, false),
    of.number('limitHigh', say.high, false),
    of.yes('required', say.required),
  ];
}

/** All that can be said of a thing of a removal. */
export function thingFields(view: JobView, table: ThingTable, id: string): BenchField[] {
  const row = (view.state[table] as readonly { readonly id: string }[]).find((one) => one.id === id);
  if (!row) return [];
  switch (table) {
    case 'fset':
      return setFields(view, row as Row<'fset'>);
    case 'part':
      return partFields(view, row as Row<'part'>);
    case 'connection':
      return connectionFields(row as Row<'connection'>);
    case 'measure':
      return measureFields(row as Row<'measure'>);
    case 'fluid': {
      const of = fieldsFor('fluid', row as Row<'fluid'>);
      return [
        of.line('name', say.name),
        of.line('type', say.fluidType, say.fluidTypeExample),
        of.line('batch', say.batch),
      ];
    }
    case 'isolation': {
      const of = fieldsFor('isolation', row as Row<'isolation'>);
      const energies = TABLES.isolation.schema.shape.energy.options;
      return [
        of.line('how', say.safeHow),
        of.pick('energy', say.energy, energies),
        of.line('lockOwner', say.lockOwner),
      ];
    }
    case 'temporary': {
      const of = fieldsFor('temporary', row as Row<'temporary'>);
      const roles = TABLES.temporary.schema.shape.role.options;
      return [
        of.line('name', say.name),
        of.number('qty', say.quantity, true),
        of.choice('role', say.role, roles),
      ];
    }
    case 'mark': {
      const of = fieldsFor('mark', row as Row<'mark'>);
      const kinds = TABLES.mark.schema.shape.kind.options;
      return [of.text('body', say.markBody, ''), of.choice('kind', say.markKind, kinds)];
    }
  }
}
