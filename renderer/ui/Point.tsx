import type { ReactNode } from 'react';
import { common } from '../texts/common.ts';
import { Say, type Rich } from './rich.tsx';

/** An open point: what, where, how grave, and in its words what clears it. */
export interface PointData {
  readonly id: string;
  readonly grave: 'stop' | 'warn' | 'note';
  readonly say: Rich;
}

/** A stop is an ink block with the word in it, a warning the same in outline, a note has no block. */
export function Point({ point, children }: { readonly point: PointData; readonly children?: ReactNode }) {
  return (
    <li className={point.grave === 'note' ? 'point note' : 'point'}>
      {point.grave !== 'note' && <span className={`grave ${point.grave}`}>{common.grave[point.grave]}</span>}
      <p>
        <Say text={point.say} />
      </p>
      {children}
    </li>
  );
}

export function Points({ points }: { readonly points: readonly PointData[] }) {
  return (
    <ul className="points">
      {points.map((point) => (
        <Point key={point.id} point={point} />
      ))}
    </ul>
  );
}
