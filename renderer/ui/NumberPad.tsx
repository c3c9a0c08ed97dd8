import type { ReactNode } from 'react';
import { entry as say } from '../texts/entry.ts';
import { Key } from './Key.tsx';

export interface NumberPadProps {
  /** A digit, or "x" between a count and a size. */
  readonly onType: (text: string) => void;
  /** The column of actions at the right: three keys, the last one two rows high. */
  readonly children: readonly [ReactNode, ReactNode, ReactNode];
}

/** Number keys with gloves on: the digits of a telephone turned as on a keyboard's number block. */
export function NumberPad({ onType, children }: NumberPadProps) {
  const digit = (n: string, className = '') => (
    <Key key={n} look="digit" className={className} onPress={() => onType(n)}>
      {n}
    </Key>
  );
  return (
    <div className="pad" role="group" aria-label={say.pad}>
      {['7', '8', '9'].map((n) => digit(n))}
      {children[0]}
      {['4', '5', '6'].map((n) => digit(n))}
      {children[1]}
      {['1', '2', '3'].map((n) => digit(n))}
      {children[2]}
      {digit('0', 'zero')}
      <Key look="digit" label={say.times} onPress={() => onType('x')}>
        ×
      </Key>
    </div>
  );
}
