import { tray as say } from '../../texts/tray.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

/** What is measured of a loose fastener, as typed. */
export interface MeasureData {
  readonly count: string;
  readonly thread: string;
  readonly pitch: string;
  readonly length: string;
  readonly tolerance: string;
  readonly head: string;
  readonly kind: '' | 'nut' | 'washer';
}

export interface MeasureProps {
  readonly measure: MeasureData;
  readonly unit: 'mm' | 'in';
  /** Why it cannot be taken as it stands. */
  readonly refused: string | null;
  /** Left out where one piece is measured and nothing is listed. */
  readonly onAdd?: () => void;
  readonly onMeasure: (measure: MeasureData) => void;
  readonly onUnit: (unit: 'mm' | 'in') => void;
}

/** Fields for a caliper and a thread gauge; whatever was not measured stays empty. */
export function MeasureForm({ measure, unit, refused, onAdd, onMeasure, onUnit }: MeasureProps) {
  const field = (name: Exclude<keyof MeasureData, 'kind'>, label: string, example: string, first = false) => (
    <Field
      label={label}
      example={example}
      value={measure[name]}
      first={first}
      numeric={name === 'count' || name === 'length' || name === 'tolerance'}
      onChange={(value) => onMeasure({ ...measure, [name]: value })}
    />
  );
  return (
    <form
      className={onAdd === undefined ? 'measure one' : 'measure'}
      onSubmit={(event) => {
        event.preventDefault();
        onAdd?.();
        event.currentTarget.querySelector('input')?.focus();
      }}
    >
      {onAdd !== undefined && field('count', say.count, '4', true)}
      {field('thread', say.thread, say.threadExample, onAdd === undefined)}
      {field('pitch', say.pitch, say.pitchExample)}
      {field('length', say.length, say.lengthExample)}
      {field('tolerance', say.tolerance, say.toleranceExample)}
      {field('head', say.head, say.headExample)}
      <div className="measure-choices">
        <Choice
          name={say.kind}
          value={measure.kind}
          onChange={(kind) => onMeasure({ ...measure, kind })}
          options={(['', 'nut', 'washer'] as const).map((value) => ({ value, label: say.kinds[value] }))}
        />
        <Choice
          name={say.unit}
          value={unit}
          onChange={onUnit}
          options={(['mm', 'in'] as const).map((value) => ({ value, label: say.units[value] }))}
        />
      </div>
      {refused !== null && (
        <p className="measure-why" role="alert">
          {refused}
        </p>
      )}
      {onAdd !== undefined && (
        <Key submits onPress={() => undefined} hint="Enter">
          {say.add}
        </Key>
      )}
    </form>
  );
}
