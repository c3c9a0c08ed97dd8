import type { Result } from '../../core/model/result.ts';
import type { client } from '../data/client.ts';

type Input<Op extends (input: never) => unknown> = Omit<
  Extract<Parameters<Op>[0], object>,
  'command' | 'jobId' | 'at'
>;

/** What a field asks of the record, as data: one command each, so one undo. */
export type Write =
  | ({ readonly verb: 'change' } & Input<typeof client.record.change>)
  | ({ readonly verb: 'did' } & Input<typeof client.removal.did>)
  | ({ readonly verb: 'spec' } & Input<typeof client.set.spec>)
  | ({ readonly verb: 'lengths' } & Input<typeof client.set.lengths>)
  | ({ readonly verb: 'torque' } & Input<typeof client.set.torque>)
  | ({ readonly verb: 'count' } & Input<typeof client.set.count>)
  | ({ readonly verb: 'stow' } & Input<typeof client.set.stow>)
  | ({ readonly verb: 'partStow' } & Input<typeof client.part.stow>)
  | { readonly verb: 'who'; readonly removalId: string; readonly name: string };

interface Base {
  /** Names thing and field: what is half typed comes back under it. */
  readonly id: string;
  readonly label: string;
  /** What it means as typed, or why it cannot be taken. */
  readonly write: (value: string) => Result<Write>;
}

export interface Option {
  readonly value: string;
  readonly label: string;
}

/** One field of a thing at the bench. */
export type BenchField =
  | (Base & { readonly kind: 'line' | 'text'; readonly value: string; readonly example?: string })
  | (Base & { readonly kind: 'pick' | 'choice'; readonly value: string; readonly options: readonly Option[] })
  | (Base & { readonly kind: 'yes'; readonly value: boolean })
  /** Answers of which one touch takes one: nothing is taken until then. */
  | (Base & { readonly kind: 'touch'; readonly options: readonly Option[] });

/** One hole, with what is known of it by itself. */
export interface BenchHole {
  readonly id: string;
  readonly n: number;
  /** "30 mm", "stripped": what stands under its number. */
  readonly about: string;
}
