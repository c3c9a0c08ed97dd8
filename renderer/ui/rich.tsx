import { Fragment } from 'react';

/** A sentence, some of whose words weigh more. */
export type Rich = string | readonly (string | { readonly strong: string })[];

/** Shows a sentence with its weight. */
export function Say({ text }: { readonly text: Rich }) {
  if (typeof text === 'string') return text;
  return text.map((part, i) =>
    // The parts of one sentence never change places, so their index is their identity.
    typeof part === 'string' ? <Fragment key={i}>{part}</Fragment> : <strong key={i}>{part.strong}</strong>,
  );
}
