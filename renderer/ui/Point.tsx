import type { ReactNode } from 'react';
import { common } from '../texts/common.ts';
import { Key } from './Key.tsx';
import { Say, type Rich } from './rich.tsx';

/** An open point: what, where, how grave, and in its words what clears it. */
export interface PointData {
  readonly id: string;
  readonly grave: 'stop' | 'warn' | 'note';
  readonly say: Rich;
  /** What it can be answered with on the spot. */
  readonly answers?: readonly { readonly id: string; readonly label: string }[];
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

interface PointsProps {
  readonly points: readonly PointData[];
  readonly onAnswer?: (pointId: string, answerId: string) => void;
}

export function Points({ points, onAnswer }: PointsProps) {
  return (
    <ul className="points">
      {points.map((point) => (
        <Point key={point.id} point={point}>
          {onAnswer !== undefined && point.answers !== undefined && (
            <div className="keys">
              {point.answers.map((answer) => (
                <Key key={answer.id} onPress={() => onAnswer(point.id, answer.id)}>
                  {answer.label}
                </Key>
              ))}
            </div>
          )}
        </Point>
      ))}
    </ul>
  );
}
