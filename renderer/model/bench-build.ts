import type { JobView } from '../../core/contract/views.ts';
import { ok, type Result, refuse } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import { bench as say } from '../texts/bench.ts';
import type { BenchField, Option, Write } from './bench-fields.ts';

/** Values as options, in the words of the screen. */
export const optionsOf = (values: readonly string[]): Option[] =>
  values.map((value) => ({ value, label: say.word(value) }));

type Take = (value: string) => Result<Write>;

/** Fields of one thing; `of` stands before the name of each. */
export function fieldKinds(of: string) {
  const typed =
    (kind: 'line' | 'text') =>
    (name: string, label: string, value: string, example: string, write: Take): BenchField => ({
      kind,
      id: `${of}/${name}`,
      label,
      value,
      ...(example !== '' && { example }),
      write,
    });
  const chosen =
    (kind: 'pick' | 'choice') =>
    (name: string, label: string, value: string, options: readonly Option[], write: Take): BenchField => ({
      kind,
      id: `${of}/${name}`,
      label,
      value,
      options,
      write,
    });
  return {
    line: typed('line'),
    text: typed('text'),
    pick: chosen('pick'),
    choice: chosen('choice'),
    yes: (
      name: string,
      label: string,
      value: boolean,
      write: (yes: boolean) => Result<Write>,
    ): BenchField => ({
      kind: 'yes',
      id: `${of}/${name}`,
      label,
      value,
      write: (answer) => write(answer === 'yes'),
    }),
  };
}

/** "bag 4", "tin A", or "4" for a bag. */
export function readStow(typed: string): Result<{ kind: Row<'stow'>['kind']; label: string }> {
  const match = /^\s*(?:(bag|tin|tray|shelf)\s+)?(\S.*?)\s*$/i.exec(typed);
  if (!match) return refuse('input', say.bagExpected);
  return ok({ kind: (match[1]?.toLowerCase() ?? 'bag') as Row<'stow'>['kind'], label: match[2] ?? '' });
}

export const stowName = (view: JobView, id: string | null): string => {
  const stow = view.state.stow.find((one) => one.id === id);
  return stow ? `${stow.kind} ${stow.label}` : '';
};
