import type { ReactNode } from 'react';

export interface RowData {
  readonly id: string;
  /** Number of the bag; "" for none. */
  readonly mark: string;
  readonly name: string;
  readonly count: number | string;
  readonly about: string;
  /** True where the words about it must be seen: counts that differ, being counted. */
  readonly grave?: boolean;
}

export interface RowsProps {
  readonly title: string;
  readonly rows: readonly RowData[];
  readonly atId?: string | null;
  readonly onPick: (id: string) => void;
  readonly children?: ReactNode;
}

/** A titled list of things with their number, count and what is to be known about each. */
export function Rows({ title, rows, atId = null, onPick, children }: RowsProps) {
  return (
    <section>
      <h2 className="rows-title">{title}</h2>
      <ul>
        {rows.map((row) => (
          <li key={row.id}>
            <button
              type="button"
              className="row"
              aria-current={row.id === atId ? 'true' : undefined}
              onClick={() => onPick(row.id)}
            >
              <b className="num">{row.mark}</b>
              <span className="said">{row.name}</span>
              <b className="num count">{row.count}</b>
              <span className={row.grave ? 'about grave-words' : 'about'}>{row.about}</span>
            </button>
          </li>
        ))}
      </ul>
      {children}
    </section>
  );
}
