import { extension } from './extension.ts';
import { identify } from './identify.ts';
import { mix } from './mix.ts';
import { oring } from './oring.ts';
import { tighten } from './tighten.ts';
import { torque } from './torque.ts';
import { units } from './units.ts';
import type { HandbookVerb } from './verb.ts';

export type { HandbookVerb, Options, VerbAnswer } from './verb.ts';

/** The handbook's verbs, for the command line: each pure, from options as typed to a value and lines of text. */
export const HANDBOOK_VERBS: readonly HandbookVerb[] = [
  identify,
  torque,
  extension,
  tighten,
  oring,
  mix,
  units,
];
