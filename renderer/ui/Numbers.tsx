import type { ReactNode } from 'react';

/** A count with its word. */
export interface Count {
  readonly label: string;
  readonly value: number | string;
  /** The one that matters now: the largest. */
  readonly largest?: boolean;
  /** Stands at the other end of the row. */
  readonly end?: boolean;
}

/** A few numbers in a row, each with its word under it. */
export function Trio({ counts }: { readonly counts: readonly Count[] }) {
  return (
    <dl className="trio">
      {counts.map((count) => (
        <div key={count.label} className={count.largest ? 'largest' : count.end ? 'end' : undefined}>
          <dt>{count.label}</dt>
          <dd className="num">{count.value}</dd>
        </div>
      ))}
    </dl>
  );
}

export interface BigNumberProps {
  readonly value: string;
  /** Beside it, large: the unit or what is counted. */
  readonly unit?: string;
  /** Beside it, small. */
  readonly children?: ReactNode;
  /** True where the number names the thing at hand. */
  readonly at?: boolean;
  readonly size?: number;
}

/** The one number of the screen, read from a metre. */
export function BigNumber({ value, unit, children, at = false, size }: BigNumberProps) {
  return (
    <p className={at ? 'big at' : 'big'}>
      <b className="num" style={size === undefined ? undefined : { fontSize: size }}>
        {value}
      </b>
      <span className="unit">
        {unit !== undefined && <b>{unit}</b>}
        {children !== undefined && <span className="cap">{children}</span>}
      </span>
    </p>
  );
}
